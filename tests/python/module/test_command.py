"""The module says what the command says, byte for byte."""

import json
import os
import pickle
import subprocess

import tussock


def told(command, *arguments, cwd):
    done = subprocess.run([command, *map(str, arguments)], cwd=cwd, capture_output=True, check=True)
    return done.stdout


def test_findings_are_those_of_the_command(command, demo, nights):
    names = [os.path.relpath(night, demo) for night in nights]
    said = told(
        command, "analyse", *names, "--plan", "plan.geojson", "--settings", "settings.toml", "--seed", 7,
        "--no-suggestions", "--format", "json", cwd=demo,
    )  # fmt: skip
    here = os.getcwd()
    os.chdir(demo)
    try:
        found = tussock.analyse(names, plan="plan.geojson", settings="settings.toml", seed=7, suggestions=False)
    finally:
        os.chdir(here)
    assert found.to_json().encode() == said


def test_the_inspection_is_that_of_the_command(command, demo, nights):
    said = told(command, "inspect", nights[0], "--format", "json", cwd=demo)
    assert tussock.Record(json.loads(said)) == tussock.inspect(nights[0])


def test_either_may_renew_a_folder_that_the_other_wrote(command, demo, nights, findings, tmp_path):
    folder = tmp_path / "out"
    findings.report(folder)
    told(
        command, "report", findings_file(findings, tmp_path), "--out", folder, cwd=demo,
    )  # fmt: skip
    written = {path.name: path.read_bytes() for path in findings.report(folder)}
    assert written["findings.json"] == findings.to_json().encode()


def findings_file(findings, folder):
    path = folder / "saved.json"
    path.write_text(findings.to_json())
    return path


def test_a_comparison_of_logs_is_that_of_the_command(command, demo, settings):
    before, after = ["before/2026-05-04.gpx.gz"], ["after/2026-05-11.gpx.gz"]
    said = told(
        command, "compare", "--before", *before, "--after", *after, "--plan", "plan.geojson", "--after-plan",
        "plan-after.geojson", "--settings", "settings.toml", "--seed", 3, "--format", "json", cwd=demo,
    )  # fmt: skip
    here = os.getcwd()
    os.chdir(demo)
    try:
        sides = [
            tussock.analyse(logs, plan=laid, settings=settings, seed=3, suggestions=False)
            for logs, laid in ((before, "plan.geojson"), (after, "plan-after.geojson"))
        ]
        compared = tussock.compare(*sides, seed=3)
    finally:
        os.chdir(here)
    assert compared.to_json().encode() == said
    assert pickle.loads(pickle.dumps(compared)).to_json() == compared.to_json()
