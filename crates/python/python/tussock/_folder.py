"""Files that go out: complete or not there at all, and never over somebody else's.

The same rules and the same list as the command's, so that either may renew what the other wrote.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Sequence
from pathlib import Path

from ._errors import OutputError
from ._tussock import TOOL_VERSION

LIST = ".tussock-outputs.json"


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _known(folder: Path) -> dict[str, list[str]]:
    try:
        told = json.loads((folder / LIST).read_bytes())
        return {name: list(digests) for name, digests in told["files"].items()}
    except FileNotFoundError:
        return {}
    except (ValueError, KeyError, AttributeError, TypeError) as error:
        raise OutputError(
            f"{folder / LIST}: cannot be understood ({error}), expected the list of what was written", "list"
        ) from error


def _stage(folder: Path, data: bytes) -> str:
    handle, name = tempfile.mkstemp(prefix=".tussock-", dir=folder)
    with os.fdopen(handle, "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())
    os.chmod(name, 0o644)
    return name


def _list_of(files: dict[str, list[str]]) -> bytes:
    told = {"tool": "tussock", "tool_version": TOOL_VERSION, "files": dict(sorted(files.items()))}
    return (json.dumps(told, indent=2) + "\n").encode()


def write(folder: Path, outputs: Sequence[tuple[str, bytes]], names: Sequence[str]) -> list[Path]:
    """Writes outputs into a folder and takes away those of an earlier run that are no longer made.

    Raises :class:`OutputError` before anything is written where a file of one of ``names`` is not ours.
    """
    try:
        return _written(folder, outputs, names)
    except OSError as failed:
        raise OutputError(f"{failed.filename or folder}: cannot be written: {failed.strerror or failed}", "write") from failed


def _written(folder: Path, outputs: Sequence[tuple[str, bytes]], names: Sequence[str]) -> list[Path]:
    if folder.exists() and not folder.is_dir():
        raise OutputError(f"{folder}: is a file, expected a folder", "not_a_folder")
    known = _known(folder)
    ours: dict[str, list[str]] = {}
    for name in names:
        path = folder / name
        if not path.exists():
            continue
        digest = _digest(path.read_bytes())
        if digest not in known.get(name, []):
            why = "was changed since it was written" if name in known else "was not written by this tool"
            raise OutputError(
                f"{path}: {why}, expected a folder without it", "not_ours", "give another folder, or move the file away"
            )
        ours[name] = [digest]
    folder.mkdir(parents=True, exist_ok=True)
    new = {name: [_digest(data)] for name, data in outputs}
    both = {name: new.get(name, []) + ours.get(name, []) for name in {*new, *ours}}
    staged: list[str] = []
    try:
        pairs = []
        for name, data in outputs:
            staged.append(_stage(folder, data))
            pairs.append((staged[-1], folder / name))
        staged += [_stage(folder, _list_of(both)), _stage(folder, _list_of(new))]
        # The list knows old and new while files are replaced, so that a killed run does not lock its folder.
        os.replace(staged[-2], folder / LIST)
        for temporary, path in pairs:
            os.replace(temporary, path)
        for name in set(ours) - set(new):
            (folder / name).unlink(missing_ok=True)
        os.replace(staged[-1], folder / LIST)
    finally:
        for temporary in staged:
            Path(temporary).unlink(missing_ok=True)
    return [path for _, path in pairs]
