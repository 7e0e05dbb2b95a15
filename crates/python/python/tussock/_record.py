"""Findings as they stand in ``findings.json``, with dots."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any


def wrapped(value: Any) -> Any:
    """Objects become records, lists become tuples, all else stays."""
    if isinstance(value, dict):
        return Record(value)
    if isinstance(value, list):
        return tuple(wrapped(item) for item in value)
    return value


def told(text: str) -> Any:
    """What JSON says, as records."""
    return wrapped(json.loads(text))


class Record(Mapping[str, Any]):
    """One object of a result: a read-only mapping whose keys are attributes too.

    The keys are those of ``findings.json``; each carries its unit in its name. Type checkers know them from :mod:`tussock.fields`.

    >>> visited = Record({"visited_fraction": {"estimate": 0.9}})
    >>> visited.visited_fraction.estimate == visited["visited_fraction"]["estimate"] == 0.9
    True
    """

    __slots__ = ("_fields",)
    _fields: dict[str, Any]

    def __init__(self, fields: Mapping[str, Any]) -> None:
        object.__setattr__(self, "_fields", {key: wrapped(value) for key, value in fields.items()})

    def __getitem__(self, key: str) -> Any:
        return self._fields[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._fields)

    def __len__(self) -> int:
        return len(self._fields)

    # Hidden from type checkers, which know the fields of each kind of record and name a misspelt one.
    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            try:
                return object.__getattribute__(self, "_fields")[name]
            except (KeyError, AttributeError):
                raise AttributeError(f"no field {name!r}, expected one of {', '.join(self)}") from None

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"{name}: a result is read-only")

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *self._fields]

    def __repr__(self) -> str:
        return f"Record({self.to_dict()!r})"

    def __reduce__(self) -> tuple[object, ...]:
        return (Record, (self.to_dict(),))

    def to_dict(self) -> dict[str, Any]:
        """Plain dicts and lists."""
        return {key: _plain(value) for key, value in self._fields.items()}


def _plain(value: Any) -> Any:
    if isinstance(value, Record):
        return value.to_dict()
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    return value
