//! What comes into a build: licences, sources, versions and build scripts are those of `deny.toml`.
//!
//! Reads `cargo metadata` with the locked versions. A new dependency that breaks a list is either not taken, or is a line in
//! that file with its reason.

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Package, PackageId, TargetKind};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn deny() -> toml::Table {
    std::fs::read_to_string(root().join("deny.toml"))
        .expect("deny.toml is there")
        .parse()
        .expect("deny.toml is TOML")
}

fn list(deny: &toml::Table, table: &str, key: &str) -> Vec<String> {
    let entries = deny[table][key].as_array().expect("a list");
    let crate_of = |entry: &toml::Value| entry.get("crate").unwrap_or(entry).as_str().map(str::to_owned);
    entries
        .iter()
        .map(|entry| crate_of(entry).expect("a name"))
        .collect()
}

/// Everything in the lock that a machine of this kind builds, tests included.
fn metadata() -> Metadata {
    MetadataCommand::new()
        .manifest_path(root().join("Cargo.toml"))
        .other_options(["--locked", "--filter-platform", "x86_64-unknown-linux-gnu"].map(str::to_owned))
        .exec()
        .expect("cargo metadata runs with the lock as it is")
}

/// Packages that a build of the command uses; those of tests are left out.
fn shipped(metadata: &Metadata) -> Vec<&Package> {
    let resolve = metadata.resolve.as_ref().expect("resolved");
    let command = metadata
        .packages
        .iter()
        .find(|package| package.name.as_str() == "tussock-cli");
    let mut open: Vec<&PackageId> = vec![&command.expect("the command is there").id];
    let mut seen: BTreeSet<&PackageId> = BTreeSet::new();
    while let Some(id) = open.pop() {
        if !seen.insert(id) {
            continue;
        }
        let node = resolve.nodes.iter().find(|node| node.id == *id).expect("a node");
        let in_builds = node.deps.iter().filter(|dep| {
            dep.dep_kinds
                .iter()
                .any(|kind| matches!(kind.kind, DependencyKind::Normal | DependencyKind::Build))
        });
        open.extend(in_builds.map(|dep| &dep.pkg));
    }
    let packages = metadata.packages.iter();
    packages.filter(|package| seen.contains(&package.id)).collect()
}

/// Libraries with the features that they are built with, as `cargo tree` lists them.
fn built(of: &[&str]) -> BTreeSet<String> {
    let output = std::process::Command::new(env!("CARGO"))
        .current_dir(root())
        .args(["tree", "--locked", "--prefix", "none", "--format", "{p}|{f}"])
        .args(of)
        .output()
        .expect("cargo tree runs");
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let lines = String::from_utf8(output.stdout).expect("it is text");
    let lines = lines.lines().map(|line| line.trim_end_matches(" (*)").to_owned());
    lines.filter(|line| !line.contains("(/")).collect()
}

#[test]
fn the_module_is_built_of_the_libraries_of_the_workspace() {
    // What the compiler runs is built with other features: one library may be there twice.
    let workspace = built(&["--workspace", "--edges", "normal,dev,no-proc-macro"]);
    let module = built(&["--package", "tussock-python", "--edges", "normal,no-proc-macro"]);
    assert!(module.len() > 100);
    let others: Vec<&String> = module.difference(&workspace).collect();
    assert!(
        others.is_empty(),
        "with other features than in the workspace, so compiled twice (see the features in crates/python/Cargo.toml): {others:?}"
    );
}

/// Whether an SPDX expression can be met from the list: `OR` (and the older `/`) binds weaker than `AND`.
fn is_allowed(expression: &str, allowed: &[String]) -> bool {
    let spaced = expression
        .replace('/', " OR ")
        .replace('(', " ( ")
        .replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut at = 0;
    let met = any_of(&words, &mut at, allowed);
    met && at == words.len()
}

fn any_of(words: &[&str], at: &mut usize, allowed: &[String]) -> bool {
    let mut met = all_of(words, at, allowed);
    while words.get(*at) == Some(&"OR") {
        *at += 1;
        met |= all_of(words, at, allowed);
    }
    met
}

fn all_of(words: &[&str], at: &mut usize, allowed: &[String]) -> bool {
    let mut met = one_of(words, at, allowed);
    while words.get(*at) == Some(&"AND") {
        *at += 1;
        met &= one_of(words, at, allowed);
    }
    met
}

fn one_of(words: &[&str], at: &mut usize, allowed: &[String]) -> bool {
    let Some(&word) = words.get(*at) else { return false };
    *at += 1;
    if word == "(" {
        let met = any_of(words, at, allowed);
        let closed = words.get(*at) == Some(&")");
        *at += 1;
        return met && closed;
    }
    let mut name = word.to_owned();
    if words.get(*at) == Some(&"WITH") {
        let exception = words.get(*at + 1).copied().unwrap_or_default();
        name = format!("{word} WITH {exception}");
        *at += 2;
    }
    allowed.contains(&name)
}

#[test]
fn licence_expressions_are_read_as_spdx_means_them() {
    let allowed = ["MIT", "Zlib", "Apache-2.0 WITH LLVM-exception"].map(str::to_owned);
    for (expression, expected) in [
        ("MIT", true),
        ("GPL-3.0", false),
        ("GPL-3.0 OR MIT", true),
        ("GPL-3.0/MIT", true),
        ("GPL-3.0 AND MIT", false),
        ("MIT AND Zlib", true),
        ("(GPL-3.0 OR MIT) AND Zlib", true),
        ("(GPL-3.0 OR MIT) AND BSD", false),
        ("GPL-3.0 OR MIT AND Zlib", true),
        ("Apache-2.0", false),
        ("Apache-2.0 WITH LLVM-exception", true),
        ("(MIT", false),
        ("MIT MIT", false),
        ("", false),
    ] {
        assert_eq!(is_allowed(expression, &allowed), expected, "{expression}");
    }
}

#[test]
fn every_licence_is_one_that_we_accept() {
    let allowed = list(&deny(), "licenses", "allow");
    let metadata = metadata();
    assert!(metadata.packages.len() > 100);
    for package in &metadata.packages {
        let licence = package.license.as_deref().unwrap_or_default();
        assert!(
            is_allowed(licence, &allowed),
            "{} {}: {licence:?}",
            package.name,
            package.version
        );
    }
}

#[test]
fn every_package_comes_from_the_one_registry_with_a_digest() {
    let registries = list(&deny(), "sources", "allow-registry");
    let rooms = root().to_str().expect("a path in UTF-8");
    for package in metadata().packages {
        match &package.source {
            Some(source) => assert!(
                registries
                    .iter()
                    .any(|registry| source.repr == format!("registry+{registry}")),
                "{} comes from {}",
                package.name,
                source.repr
            ),
            None => assert!(
                package.manifest_path.as_str().starts_with(rooms),
                "{} lies outside of the repository",
                package.name
            ),
        }
    }
    // In the lock too, where packages of other systems stand beside ours.
    for lock in ["Cargo.lock", "fuzz/Cargo.lock"] {
        let lock: toml::Table = std::fs::read_to_string(root().join(lock))
            .expect("it is there")
            .parse()
            .expect("a lock is TOML");
        for package in lock["package"].as_array().expect("a list") {
            let Some(source) = package.get("source").and_then(toml::Value::as_str) else {
                continue;
            };
            assert!(
                registries
                    .iter()
                    .any(|registry| source == format!("registry+{registry}")),
                "{package}"
            );
            let digest = package.get("checksum").and_then(toml::Value::as_str);
            assert!(digest.is_some_and(|digest| digest.len() == 64), "{package}");
        }
    }
}

#[test]
fn nothing_that_is_banned_comes_in_and_no_second_version_without_a_reason() {
    let deny = deny();
    let banned = list(&deny, "bans", "deny");
    let metadata = metadata();
    let shipped = shipped(&metadata);
    assert!(shipped.len() > 50);
    let mut versions: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    for package in &shipped {
        assert!(
            !banned.contains(&package.name.to_string()),
            "{} is banned",
            package.name
        );
        versions
            .entry(package.name.as_str())
            .or_default()
            .insert(package.version.to_string());
    }
    let skipped: BTreeSet<String> = list(&deny, "bans", "skip").into_iter().collect();
    let mut extra = BTreeSet::new();
    for (name, versions) in versions.iter().filter(|(_, versions)| versions.len() > 1) {
        let unexplained: Vec<String> = versions
            .iter()
            .map(|version| format!("{name}@{version}"))
            .filter(|spec| !skipped.contains(spec))
            .collect();
        assert_eq!(unexplained.len(), 1, "{unexplained:?} stand beside each other");
        extra.extend(versions.iter().map(|version| format!("{name}@{version}")));
    }
    let stale: Vec<&String> = skipped.difference(&extra).collect();
    assert!(stale.is_empty(), "{stale:?} need no exception any more");
}

#[test]
fn every_build_script_is_known_and_none_reaches_out() {
    let deny = deny();
    let known: BTreeSet<String> = deny["bans"]["build"]["allow-build-scripts"]
        .as_array()
        .expect("a list")
        .iter()
        .map(|name| name.as_str().expect("a name").to_owned())
        .collect();
    let metadata = metadata();
    let mut found = BTreeSet::new();
    for package in shipped(&metadata) {
        for target in &package.targets {
            if !target.kind.contains(&TargetKind::CustomBuild) {
                continue;
            }
            found.insert(package.name.to_string());
            let text = std::fs::read_to_string(&target.src_path).expect("its source is there");
            let code: String = text
                .lines()
                .map(|line| line.split_once("//").map_or(line, |(code, _)| code))
                .collect::<Vec<_>>()
                .join("\n");
            for word in [
                "TcpStream",
                "UdpSocket",
                "curl",
                "wget",
                "reqwest",
                "ureq",
                "\"git\"",
                "\"sh\"",
                "\"bash\"",
            ] {
                assert!(
                    !code.contains(word),
                    "{}: its build script has {word}",
                    package.name
                );
            }
        }
    }
    assert_eq!(found, known, "build scripts and their list in deny.toml");
}

#[test]
fn our_own_code_has_no_unsafe_but_the_line_that_lends_columns_to_numpy_and_the_names_that_a_page_calls() {
    // The lint refuses it in each room; here it is counted, so that an allowance does not slip in.
    let metadata = metadata();
    let mut allowances = Vec::new();
    let mut files = 0;
    for package in metadata.workspace_packages() {
        let manifest = std::fs::read_to_string(&package.manifest_path).expect("it is there");
        assert!(
            manifest.contains("[lints]\nworkspace = true"),
            "{} has lints of its own",
            package.name
        );
    }
    let mut folders = vec![root().join("crates"), root().join("tests"), root().join("fuzz")];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).expect("it is there").flatten() {
            let path = entry.path();
            if path.is_dir() {
                // What fuzzing built is not ours.
                folders.extend(Some(path).filter(|path| !path.ends_with("fuzz/target")));
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                files += 1;
                let text = std::fs::read_to_string(&path).expect("it is text");
                let word = concat!("un", "safe");
                let uses = [
                    format!("{word} {{"),
                    format!("{word} fn"),
                    format!("{word} impl"),
                    format!("allow({word}"),
                ];
                let count: usize = uses
                    .iter()
                    .map(|a_use| text.matches(a_use.as_str()).count())
                    .sum();
                allowances.extend(std::iter::repeat_n(path, count));
            }
        }
    }
    assert!(files > 200, "{files}");
    allowances.sort();
    let known = ["crates/python/src/trace.rs", "crates/web/src/exports.rs"];
    assert_eq!(allowances, known.map(|path| root().join(path)));
    let workspace = std::fs::read_to_string(root().join("Cargo.toml")).expect("it is there");
    assert!(workspace.contains(concat!("un", "safe_code = \"deny\"")));
}
