"""Writes python/tussock/fields.py: the fields of all results, so that type checkers catch a misspelt one.

Findings, comparisons and inspections come from their schemas in docs/, the bench's results from the structs of `study`, and what Python
itself puts together from the tables below. `python crates/python/fields.py`; a test compares.
"""

import json
import keyword
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
OUT = ROOT / "crates/python/python/tussock/fields.py"
#: Fields that mappings have as methods, and words of Python, are reached as ``record["values"]``.
METHODS = {"values", "keys", "items", "get"}
HEAD = '''"""Fields of results, for type checkers; at run time all of them are records. Written by crates/python/fields.py."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from ._record import Record

'''
#: Roots of schemas whose class has methods too.
ROOTS = {"findings": ("FindingsFields", "object"), "comparison": ("ComparisonFields", "object"), "inspection": ("Inspection", "Record")}
STUDY = ("measures/mod.rs", "measures/curve.rs", "measures/guess.rs", "measures/in_lanes.rs", "measures/laws.rs", "measures/work.rs",
         "statistics/nested.rs", "statistics/bootstrap.rs", "statistics/fit.rs")  # fmt: skip
RESULTS = ("Measures", "PatternGuess", "Spread", "Compared")
RUST = {"f64": "float", "u64": "int", "usize": "int", "bool": "bool", "String": "str"}
OWN = {
    "PlanChecked": {"is_sound": "bool", "lawn_m2": "float", "edge_m": "float", "rows": "tuple[PlanRow, ...]", "faults": "tuple[PlanFault, ...]"},
    "PlanRow": {"role": "str", "name": "str", "feature": "int", "area_m2": "float | None", "length_m": "float | None"},
    "PlanFault": {"words": "str", "feature": "int | None", "ring": "int | None", "is_fatal": "bool"},
    "Truth": {"seed": "int", "hours": "float", "cut_width_m": "float", "cell_m": "float", "lawn_m2": "float", "visited_m2": "float",
              "visited_fraction": "float", "visits_histogram": "tuple[int, ...]", "pockets": "tuple[TruePocket, ...]", "outings": "int",
              "driven_m": "float", "driving_s": "float", "at_station_s": "float"},
    "TruePocket": {"area_m2": "float", "widest_m": "float", "east_m": "float", "north_m": "float"},
    "About": {"version": "str", "result_version": "str | None", "python": "str", "platform": "str", "libraries": "Mapping[str, str]",
              "settings": "Settings | None", "measures": "tuple[MeasureDefined, ...]", "cite": "str"},
    "MeasureDefined": dict.fromkeys(("field", "unit", "meaning", "source"), "str"),
    "ShiftDone": dict.fromkeys(("gardens", "with_news", "logs", "nights", "failures", "expired_rows", "files"), "int"),
}  # fmt: skip


def of_schema(shape):
    """A type for a schema."""
    if "$ref" in shape:
        return shape["$ref"].rsplit("/", 1)[1]
    if "enum" in shape or "const" in shape:
        return f"Literal[{', '.join(repr(one) for one in shape.get('enum', [shape.get('const')]))}]"
    if "anyOf" in shape:
        return " | ".join(of_schema(one) for one in shape["anyOf"])
    if "oneOf" in shape:
        return "Record"
    kinds = shape["type"] if isinstance(shape["type"], list) else [shape["type"]]
    return " | ".join(of_kind(kind, shape) for kind in kinds)


def of_kind(kind, shape):
    if kind == "array":
        if "prefixItems" in shape:
            return f"tuple[{', '.join(of_schema(one) for one in shape['prefixItems'])}]"
        return f"tuple[{of_schema(shape['items'])}, ...]"
    if kind == "object":
        return f"Mapping[str, {of_schema(shape['additionalProperties'])}]"
    return {"number": "float", "integer": "int", "string": "str", "boolean": "bool", "null": "None"}[kind]


def of_rust(kind, enums):
    """A type for a type of Rust."""
    inner = re.fullmatch(r"(Option|Vec)<(.+)>", kind)
    if inner:
        held = of_rust(inner[2], enums)
        return f"{held} | None" if inner[1] == "Option" else f"tuple[{held}, ...]"
    name = kind.rsplit("::", 1)[-1]
    return RUST.get(name) or enums.get(name) or name


def study():
    """Structs of the bench's results and all that they hold."""
    text = "\n".join((ROOT / "crates/study/src" / name).read_text().split("#[cfg(test)]")[0] for name in STUDY)
    text = re.sub(r"^\s*//.*\n|^\s*#\[.*\n", "", text, flags=re.M)
    bodies = lambda word: re.findall(rf"^pub {word} (\w+) \{{\n(.*?)^\}}", text, re.M | re.S)  # noqa: E731
    snake = lambda name: re.sub(r"(?<!^)(?=[A-Z])", "_", name).lower()  # noqa: E731
    enums = {name: of_schema({"enum": [snake(one) for one in re.findall(r"\w+", body)]}) for name, body in bodies("enum")}
    structs = {name: re.findall(r"pub (\w+): ([^,\n]+(?:<[^\n]*>)?),", body) for name, body in bodies("struct")}
    found, wanted = {}, list(RESULTS)
    while wanted:
        name = wanted.pop()
        found[name] = {field: of_rust(kind, enums) for field, kind in structs[name]}
        held = re.findall(r"\w+", " ".join(kind for _, kind in structs[name]))
        wanted += [one for one in held if one in structs and one not in found]
    return found


def written():
    """The whole module."""
    classes, aliases = {}, {}
    for name, (root, base) in ROOTS.items():
        schema = json.loads((ROOT / f"docs/{name}.schema.json").read_text())
        for own, shape in {**schema["$defs"], root: schema}.items():
            if "properties" in shape:
                fields = {field: of_schema(kind) for field, kind in shape["properties"].items()}
                classes[own] = (base if own == root else "Record", fields)
            else:
                aliases[own] = of_schema(shape)
    # Squares are arrays, and settings have methods.
    for own in ("FindingsFields", "Findings"):
        classes[own][1].pop("cells")
    classes.pop("Cells")
    classes.update({name: ("Record", fields) for name, fields in {**study(), **OWN}.items()})
    classes["SettingsFields"] = ("object", classes["Settings"][1])
    # What has methods of its own elsewhere is a record of the same fields inside other results.
    for own in ("Findings", "Settings"):
        classes[own] = (f"{own}Fields, Record", {})
    text = HEAD.rstrip("\n") + "\n"
    words = re.compile(rf"\b({'|'.join(aliases)})\b")
    for name, (base, fields) in sorted(classes.items(), key=lambda one: "Fields," in one[1][0]):
        rows = [f"    {field}: {words.sub(lambda found: aliases[found[1]], kind)}\n" for field, kind in fields.items() if field not in METHODS and not keyword.iskeyword(field)]
        text += f"\n\nclass {name}{'' if base == 'object' else f'({base})'}:\n{''.join(rows) or '    pass' + chr(10)}"
    return text


if __name__ == "__main__":
    OUT.write_text(written())
