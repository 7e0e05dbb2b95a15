"""Runs notebooks top to bottom, each in a process of its own, and stops at the first cell that fails.

Cells are plain Python, so no kernel is needed: what runs here runs in any notebook. A notebook opens with its question (the
first cell is text with a question mark) and ends with an assertion.
"""

import json
import subprocess
import sys
import time
from pathlib import Path


def source(cell):
    return "".join(cell["source"])


def run(path):
    cells = json.loads(Path(path).read_text())["cells"]
    first = cells[0]
    assert first["cell_type"] == "markdown" and "?" in source(first), f"{path} opens without a question"
    code = [source(cell) for cell in cells if cell["cell_type"] == "code"]
    assert "assert " in code[-1], f"{path} ends without an asserted answer"
    assert not any(cell.get("outputs") for cell in cells), f"{path} is committed with outputs"
    import matplotlib

    matplotlib.use("Agg")
    space = {"__name__": "__main__"}
    for number, text in enumerate(code, 1):
        exec(compile(text, f"{path}, cell {number}", "exec"), space)


def main(paths):
    assert paths, "no notebooks"
    failed = []
    for path in paths:
        start = time.monotonic()
        done = subprocess.run([sys.executable, __file__, "--one", Path(path).name], cwd=Path(path).parent, check=False)
        print(f"{path}: {'runs' if done.returncode == 0 else 'FAILED'}, {time.monotonic() - start:.0f} s", flush=True)
        if done.returncode:
            failed.append(path)
    return 1 if failed else 0


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        run(sys.argv[2])
    else:
        sys.exit(main(sys.argv[1:]))
