//! The page is one safe file, and says what the findings say.

use crate::garden::{
    bare_findings, findings, findings_without_width, full_findings, hostile_findings, local_findings,
};
use tussock_report::{Voice, from_json, html, map_png, map_svg, to_json};
use tussock_types::{Findings, LogLevel};

fn every_page() -> Vec<String> {
    let samples: [Findings; 6] = [
        findings(),
        full_findings(),
        findings_without_width(),
        bare_findings(),
        local_findings(),
        hostile_findings(),
    ];
    samples
        .iter()
        .map(|sample| html(sample, Voice::default()).unwrap())
        .collect()
}

/// The page up to its script, which contains comparison signs.
fn without_script(page: &str) -> &str {
    &page[..page.find("<script>").unwrap()]
}

fn body(page: &str) -> &str {
    &page[page.find("<body").unwrap()..]
}

/// The words of a page, without tags.
fn words(page: &str) -> String {
    let body = body(without_script(page));
    let mut out = String::new();
    let mut inside = false;
    for c in body.chars() {
        match c {
            '<' => inside = true,
            '>' => {
                inside = false;
                out.push(' ');
            }
            c if !inside => out.push(c),
            _ => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn nothing_is_loaded_from_anywhere() {
    for page in every_page() {
        assert!(page.contains("default-src 'none'; style-src 'sha256-") && !page.contains("unsafe"));
        for needle in ["src=\"", "href=\"", "url("] {
            for (at, _) in page.match_indices(needle) {
                let target = &page[at + needle.len()..];
                assert!(
                    target.starts_with('#') || target.starts_with("data:image/png;base64,"),
                    "{needle}{}",
                    &target[..40.min(target.len())]
                );
            }
        }
        // Names of XML vocabularies are no addresses to load from.
        let rest = page.replace("http://www.w3.org/2000/svg", "");
        for needle in [
            "http:",
            "https:",
            "//www",
            "@import",
            "<script ",
            "<link",
            "<iframe",
            "javascript:",
        ] {
            assert!(!rest.contains(needle), "{needle}");
        }
    }
}

#[test]
fn hostile_text_stays_text() {
    let page = html(&hostile_findings(), Voice::default()).unwrap();
    assert_eq!(page.matches("<script").count(), 1, "ours alone");
    assert!(!page.contains("onload='x'") && !page.contains("onload=\"x"));
    assert!(page.contains("&lt;script"));
    assert!(page.contains("{{ 7*7 }}"), "text is no template");
    assert!(!page.chars().any(|c| c != '\n' && c.is_control()));
    assert!(!page.contains('\u{202e}'));
    assert!(page.len() < 400_000, "{}", page.len());
    // Every tag that opens is one that the template or a drawing writes.
    let known = [
        "a",
        "article",
        "b",
        "bdi",
        "body",
        "br",
        "button",
        "circle",
        "dd",
        "defs",
        "details",
        "div",
        "dl",
        "dt",
        "fieldset",
        "figcaption",
        "figure",
        "footer",
        "g",
        "h1",
        "h2",
        "h3",
        "head",
        "header",
        "html",
        "i",
        "image",
        "input",
        "label",
        "legend",
        "li",
        "main",
        "marker",
        "meta",
        "nav",
        "p",
        "path",
        "pattern",
        "polyline",
        "rect",
        "section",
        "small",
        "span",
        "style",
        "summary",
        "svg",
        "table",
        "tbody",
        "td",
        "text",
        "th",
        "thead",
        "title",
        "tr",
        "ul",
        "use",
    ];
    let page = without_script(&page);
    for (at, _) in page.match_indices('<') {
        let tag: String = page[at + 1..]
            .trim_start_matches('/')
            .chars()
            .take_while(char::is_ascii_alphanumeric)
            .collect();
        assert!(
            known.contains(&tag.as_str()) || page[at..].starts_with("<!doctype"),
            "<{tag}"
        );
    }
}

#[test]
fn hostile_text_stays_text_in_the_map() {
    let svg = map_svg(&hostile_findings(), Voice::default());
    assert!(!svg.contains("<script") && !svg.contains('\u{202e}'));
    assert!(!svg.chars().any(char::is_control));
    assert!(
        map_png(&hostile_findings(), 400, Voice::default()).is_ok(),
        "the drawing is well-formed XML"
    );
}

/// Style and script run by their digests alone, so the policy must state the digests of what is there.
#[test]
fn the_policy_names_the_digests_of_style_and_script() {
    use base64::{Engine, engine::general_purpose::STANDARD};
    use sha2::{Digest, Sha256};
    for page in every_page() {
        for tag in ["style", "script"] {
            let start = page.find(&format!("<{tag}>")).unwrap() + tag.len() + 2;
            let inside = &page[start..start + page[start..].find(&format!("</{tag}>")).unwrap()];
            let digest = STANDARD.encode(Sha256::digest(inside.as_bytes()));
            assert!(page.contains(&format!("{tag}-src 'sha256-{digest}'")), "{tag}");
        }
        // Attributes of style and handlers would not run under this policy, so there may be none.
        for needle in [" style=\"", " onclick", " onload=\"", "javascript:"] {
            assert!(!without_script(&page).contains(needle), "{needle}");
        }
    }
}

#[test]
fn every_anchor_leads_somewhere_and_every_id_is_alone() {
    for page in every_page() {
        let page = without_script(&page);
        let mut ids = std::collections::BTreeSet::new();
        for part in page.split(" id=\"").skip(1) {
            let id = &part[..part.find('"').unwrap()];
            assert!(ids.insert(id), "{id} twice");
            assert!(id.chars().all(|c| c.is_ascii_alphanumeric() || c == '-'), "{id}");
        }
        for part in page.split(" href=\"#").skip(1) {
            let id = &part[..part.find('"').unwrap()];
            assert!(ids.contains(id), "#{id} leads nowhere");
        }
    }
}

#[test]
fn the_answers_stand_in_order() {
    for page in every_page() {
        let order = [
            "class=\"map\"",
            "Is the log good enough?",
            "What was missed?",
            "Why?",
            "What to change?",
            "How sure?",
            "Hours by activity",
            "How this was counted",
            "The log files, and what was not used",
            "Before you change anything",
        ];
        let places: Vec<usize> = order
            .iter()
            .map(|words| body(&page).find(words).unwrap_or_else(|| panic!("{words}")))
            .collect();
        assert!(places.is_sorted(), "{places:?}");
    }
}

#[test]
fn figures_carry_units_and_intervals_only_where_there_are_any() {
    let first = words(&html(&findings(), Voice::default()).unwrap());
    assert!(
        first.contains("One count, no interval") && !first.contains("90 % interval"),
        "{first}"
    );
    let full = words(&html(&full_findings(), Voice::default()).unwrap());
    assert!(full.contains("with a probability of 90 %"));
    for text in [first, full] {
        assert!(text.contains("m² was driven over"));
        assert!(!text.contains("NaN") && !text.contains("inf ") && !text.contains("None"));
    }
}

/// "How sure?" is below the advice, so it concerns the advice; the lawn's interval is beside its figure.
#[test]
fn each_answer_is_to_its_own_question() {
    let mut sample = full_findings();
    let page = words(&html(&sample, Voice::default()).unwrap());
    let between = |from: &str, to: &str| {
        let start = page.find(from).unwrap();
        page[start..start + page[start..].find(to).unwrap()].to_owned()
    };
    assert!(between("What was missed?", "Why?").contains("with a probability of 90 %"));
    assert!(between("What to change?", "How sure?").contains("Nine of ten simulated runs: "));
    let sure = between("How sure?", "Places");
    assert!(sure.contains("sure that G1 helps"), "{sure}");
    assert!(!sure.contains("of the lawn"), "{sure}");
    sample.suggestions = None;
    let page = words(&html(&sample, Voice::default()).unwrap());
    let sure = &page[page.find("How sure?").unwrap()..];
    assert!(
        sure[..60].contains("sure that M1 was not driven over"),
        "{}",
        &sure[..60]
    );
}

/// On a phone a row is a list, and every cell names its content.
#[test]
fn every_cell_of_a_list_names_what_it_holds() {
    let mut lists = 0;
    for page in every_page() {
        for table in page.split("<table class=\"").skip(1) {
            let (class, rest) = table.split_once('"').unwrap();
            if !class.contains("list") {
                continue;
            }
            lists += 1;
            let table = &rest[..rest.find("</table>").unwrap()];
            assert!(
                !table.contains("<td>") && !table.contains("data-h=\"\""),
                "{table}"
            );
        }
    }
    assert!(lists > 20, "{lists}");
}

#[test]
fn the_parts_of_the_lawn_add_up() {
    let sample = findings();
    let coverage = sample.coverage.as_ref().unwrap();
    let sum = coverage.visited_m2
        + coverage.missed_m2
        + coverage.not_yet_m2
        + coverage.unseen_m2
        + coverage.sliver_m2;
    assert!((sum - coverage.lawn_m2).abs() < 1e-9 * coverage.lawn_m2);
    let page = html(&sample, Voice::default()).unwrap();
    let strip = &page[page.find("class=\"strip\"").unwrap()..];
    let strip = &strip[..strip.find("</svg>").unwrap()];
    let width_of = |class: &str| -> f64 {
        let part = &strip[strip.find(&format!("\"{class}\"")).unwrap()..];
        let width = &part[part.find("width=\"").unwrap() + 7..];
        width[..width.find('"').unwrap()].parse().unwrap()
    };
    assert!((width_of("visited") / 600.0 - coverage.visited_m2 / coverage.lawn_m2).abs() < 1e-4);
    assert!((width_of("missed") / 600.0 - coverage.missed_m2 / coverage.lawn_m2).abs() < 1e-4);
}

#[test]
fn without_suggestions_it_says_where_to_walk_and_what_to_look_at() {
    let page = words(&html(&findings(), Voice::default()).unwrap());
    assert!(page.contains("Walk there and look"));
    assert!(
        page.contains("17.8 ± 0.1 m from the tool shed&#x27;s south-east corner"),
        "{page}"
    );
    let page = words(&html(&full_findings(), Voice::default()).unwrap());
    assert!(page.contains("Lay a guide run") && page.contains("9.4 m of wire"));
}

#[test]
fn a_surveyed_path_has_its_table_of_errors() {
    let mut sample = full_findings();
    let page = words(&html(&sample, Voice::default()).unwrap());
    assert!(
        page.contains("7.80 km of Mill Lane survey.csv, 28,000 fixes compared"),
        "{page}"
    );
    assert!(
        page.contains("Cross-track, logged −0.004 m 0.021 m 0.041 m 0.067 m"),
        "{page}"
    );
    assert!(page.contains("Timing, located 0.0 s 0.1 s"), "{page}");
    let reference = sample.reference.as_mut().unwrap();
    (reference.is_timed, reference.logged.timing) = (false, None);
    let page = words(&html(&sample, Voice::default()).unwrap());
    assert!(page.contains("has no times") && !page.contains("Timing, logged"));
    sample.reference = None;
    assert!(!words(&html(&sample, Voice::default()).unwrap()).contains("surveyed path"));
}

#[test]
fn a_bad_log_changes_nothing_in_the_garden() {
    let mut sample = findings();
    sample.log_verdict.level = LogLevel::Limited;
    sample.log_verdict.positions = LogLevel::Limited;
    let page = words(&html(&sample, Voice::default()).unwrap());
    assert!(page.contains("Log again first") && page.contains("is not good enough"));
}

#[test]
fn six_maps_show_how_the_lawn_filled_up() {
    let sample = findings();
    let page = html(&sample, Voice::default()).unwrap();
    let stills = &page[page.find("class=\"stills\"").unwrap()..];
    let stills = &stills[..stills.find("</details>").unwrap()];
    assert_eq!(stills.matches("<figure aria-label=").count(), 6);
    let last = sample
        .over_time
        .as_ref()
        .unwrap()
        .visited_fraction
        .last()
        .copied()
        .unwrap();
    assert!(stills.contains(&format!("{:.1}\u{a0}%", last * 100.0)));
}

#[test]
fn it_says_driven_over_and_never_claims_that_grass_was_cut() {
    for page in [findings(), full_findings()]
        .iter()
        .map(|sample| words(&html(sample, Voice::default()).unwrap()))
    {
        let lower = page.to_lowercase();
        assert!(lower.contains("driven over"));
        for (at, _) in lower.match_indices(" cut") {
            let around = &lower[at..lower.len().min(at + 30)];
            let is_allowed =
                around.starts_with(" cutting") || around.starts_with(" cut there is for the eye");
            assert!(is_allowed, "{around}");
        }
    }
}

#[test]
fn a_saved_result_draws_the_same_page_and_picture() {
    let sample = full_findings();
    let back = from_json(to_json(&sample).unwrap().as_bytes()).unwrap();
    assert!(html(&sample, Voice::default()).unwrap() == html(&back, Voice::default()).unwrap());
    assert!(
        map_png(&sample, 500, Voice::default()).unwrap() == map_png(&back, 500, Voice::default()).unwrap()
    );
}

#[test]
fn drawings_survive_numbers_that_are_not_finite() {
    let mut sample = full_findings();
    sample.missed_pockets[0].east_m = f64::NAN;
    sample.missed_pockets[0].outline[0][1].north_m = f64::INFINITY;
    sample.stuck_spots[0].radius_m = f64::NAN;
    sample.lawn_outline[0][0][0].east_m = f64::NAN;
    sample.over_time.as_mut().unwrap().visited_fraction[3] = f64::NAN;
    let cells = sample.cells.as_mut().unwrap();
    cells.visits_expected[7_000] = f32::NAN;
    cells.visits_expected.truncate(9_000);
    assert!(html(&sample, Voice::default()).unwrap().contains("class=\"map\""));
    assert!(map_png(&sample, 300, Voice::default()).is_ok());
    sample.over_time.as_mut().unwrap().visited_fraction.clear();
    sample.coverage.as_mut().unwrap().lawn_m2 = f64::NAN;
    assert!(html(&sample, Voice::default()).is_ok());
}

/// Pixels of a PNG as RGB.
fn pixels(png: &[u8]) -> (usize, Vec<u8>) {
    let mut reader = png::Decoder::new(std::io::Cursor::new(png)).read_info().unwrap();
    let mut out = vec![0; reader.output_buffer_size().unwrap()];
    let info = reader.next_frame(&mut out).unwrap();
    (info.width as usize, out)
}

#[test]
fn the_picture_has_words_without_any_font_on_the_machine() {
    let named = findings();
    let mut unnamed = named.clone();
    unnamed.settings.garden.name = Some("\u{a0}".to_owned());
    let (width, with) = pixels(&map_png(&named, 1000, Voice::default()).unwrap());
    assert_eq!(width, 1000);
    // The title is dark ink in the band above the map.
    let band = &with[..width * 3 * 45];
    let dark = band
        .chunks_exact(3)
        .filter(|pixel| pixel.iter().all(|&value| value < 90))
        .count();
    assert!(dark > 500, "{dark}");
    assert!(pixels(&map_png(&unnamed, 1000, Voice::default()).unwrap()).1 != with);
}

#[test]
fn pictures_of_odd_widths_are_refused() {
    for width_px in [0, 199, 8_001, u32::MAX] {
        let error = map_png(&findings(), width_px, Voice::default()).unwrap_err();
        assert_eq!(
            error.to_string(),
            format!("picture of {width_px} pixels, expected 200 to 8000")
        );
    }
}
