"""Findings as Python sees them."""

import json
import pickle
import threading

import numpy as np
import pytest

import tussock


def test_saved_findings_read_back_and_pickle(findings, tmp_path):
    path = tmp_path / "findings.json"
    path.write_text(findings.to_json())
    again = tussock.read_findings(path)
    assert again.to_json() == findings.to_json() == pickle.loads(pickle.dumps(findings)).to_json()


def test_areas_add_up_to_the_lawn(findings):
    found = findings.coverage
    parts_m2 = found.visited_m2 + found.missed_m2 + found.not_yet_m2 + found.unseen_m2 + found.sliver_m2
    assert parts_m2 == pytest.approx(found.lawn_m2, rel=1e-9)


def test_features_come_as_geodataframes(findings, plan):
    pockets = findings.to_geodataframe("missed_pocket")
    assert list(pockets["id"]) == [pocket.id for pocket in findings.missed_pockets]
    assert pockets.crs.to_epsg() == 4326
    areas_m2 = pockets.to_crs(pockets.estimate_utm_crs()).area
    for area_m2, pocket in zip(areas_m2, findings.missed_pockets):
        assert area_m2 == pytest.approx(pocket.area_m2, rel=0.05)
    assert set(plan.to_geodataframe()["role"]) >= {"lawn", "station"}
    with pytest.raises(tussock.ReportError, match="expected one of"):
        findings.to_geodataframe("pockets")


def test_the_tidy_table_has_the_columns_that_are_documented(findings):
    frame = tussock.tidy([findings, findings])
    assert list(frame.columns) == [column.name for column in tussock.TIDY_COLUMNS]
    assert frame["visited_fraction"][1] == findings.coverage.visited_fraction.estimate
    assert frame["missed_pockets"][0] == len(findings.missed_pockets)
    assert frame.attrs["columns"]["path_m"] == ["m", "length of the driven path"]


def test_a_tidy_row_of_a_log_without_width_leaves_counts_empty(trace):
    row = tussock.tidy_row(tussock.analyse(trace, suggestions=False))
    assert row["visited_fraction"] is None and row["path_m"] > 100.0


def test_the_plot_has_metres_hatching_and_a_scale(findings):
    axes = findings.plot()
    assert (axes.get_xlabel(), axes.get_ylabel()) == ("east, m", "north, m")
    hatched = [patch for patch in axes.patches if patch.get_hatch()]
    assert len(hatched) == len(findings.missed_pockets)
    assert axes.images[0].get_cmap().name == "cividis"
    drawn = axes.images[0].get_array()
    np.testing.assert_allclose(np.nanmax(drawn.filled(np.nan)), np.nanmax(
        np.where(findings.cells.lawn_fraction > 0, findings.cells.visits_expected, np.nan)))
    assert any(text.get_text().endswith(" m") for text in axes.texts)


def test_names_in_html_are_escaped(trace, plan):
    found = tussock.analyse(trace, plan=plan, cut_width_m=0.22, suggestions=False,
                            settings=tussock.Settings(garden={"name": "<script>alert(1)</script>"}))
    shown = found._repr_html_()
    assert "<script" not in shown and "data:image/png;base64," in shown


def test_nothing_of_the_users_is_overwritten(findings, tmp_path):
    (tmp_path / "report.html").write_text("mine")
    with pytest.raises(tussock.OutputError) as caught:
        findings.report(tmp_path)
    assert caught.value.kind == "not_ours" and (tmp_path / "report.html").read_text() == "mine"
    assert [path.name for path in tmp_path.iterdir()] == ["report.html"]


def test_other_threads_run_while_it_works(trace, plan, settings):
    """By a counter: with the interpreter held, this thread could not count during the call."""
    begun, ended = threading.Event(), threading.Event()

    def works():
        begun.set()
        tussock.analyse(trace, plan=plan, settings=settings, suggestions=False)
        ended.set()

    worker = threading.Thread(target=works)
    worker.start()
    begun.wait()
    counted = 0
    while not ended.is_set():
        counted += 1
    worker.join()
    # One switch interval of counting comes before and after the call even with the interpreter held; so many rounds do not.
    assert counted > 100_000


def test_a_simulated_night_is_the_same_again_and_its_truth_is_met():
    plan = tussock.invent_garden("islands", seed=5)
    runs = [
        tussock.simulate(plan, hours=1.0, seed=9, noise="none", cut_width_m=0.22, truth_cell_m=0.04) for _ in range(2)
    ]
    np.testing.assert_array_equal(runs[0].trace.lat_deg, runs[1].trace.lat_deg)
    assert runs[0].truth == runs[1].truth
    found = tussock.analyse(runs[0].trace, plan=plan, cut_width_m=0.22, suggestions=False)
    assert found.coverage.visited_fraction.estimate == pytest.approx(runs[0].truth.visited_fraction, abs=0.01)


def test_settings_hold_their_defaults_and_what_was_set(settings):
    assert settings.machine.cut_width_m == 0.22 and settings.pockets.stuck_after_s == 90.0
    assert tussock.Settings(**settings.to_dict()) == settings == pickle.loads(pickle.dumps(settings))
    changed = settings.changed(machine={"cut_width_m": 0.24})
    assert (changed.machine.cut_width_m, changed.machine.body_width_m) == (0.24, 0.45)


def test_plans_read_back_from_what_they_write(plan):
    again = tussock.Plan(json.loads(plan.to_geojson()))
    assert again == plan == pickle.loads(pickle.dumps(plan))


def test_cells_of_a_turned_grid_are_counted_as_by_whole_fractions(demo):
    """fixtures/grids/plaza.txt was counted without rounding by a script that knows nothing of Tussock; see its card."""
    expected = np.loadtxt(demo.parent / "grids" / "plaza.txt", dtype=int)
    trace = tussock.read(demo.parent / "recordings" / "coverage" / "plaza_lawnmower" / "Plaza1_GT.derived.csv")
    assert not trace.is_geographic
    corners = [(-44.0, -6.0), (4.0, -12.0), (-36.25, 56.0)]
    counted = tussock.count_on_grid(trace, corners, columns=45, rows=58, axes="local", new_pass_after_s=0.0)
    np.testing.assert_array_equal(counted.hits, expected)
    assert counted.cells_visited == np.count_nonzero(expected) == 1607


def test_a_place_is_asked_of_findings_and_by_settings(trace, plan, settings):
    asked = settings.changed(complaint=[{"at_m": [4.0, -8.0], "said": "long here"}, {"at_m": [900.0, 0.0]}])
    assert tussock.Settings(**asked.to_dict()) == asked
    found = tussock.analyse(trace, plan=plan, settings=asked, suggestions=False)
    here = found.at_m(4.0, -8.0, said="long here")
    assert here == found.complaints[0]
    assert here.visits.low <= here.visits.estimate <= here.visits.high
    again = found.at(here.lat, here.lon)
    assert again.answer == here.answer and again.said is None
    assert found.complaints[1].answer.code == "place_elsewhere"
    for wrong, named in [(("north", 0.0), "lat_deg"), ((91.0, 0.0), "lat_deg"), ((0.0, 181.0), "lon_deg")]:
        with pytest.raises(tussock.ReportError, match=named):
            found.at(*wrong)
    with pytest.raises(tussock.ReportError, match="said"):
        found.at_m(4.0, -8.0, said=3)
    with pytest.raises(tussock.SettingsError, match="one of complaint.at and complaint.at_m"):
        settings.changed(complaint=[{"said": "somewhere"}])
