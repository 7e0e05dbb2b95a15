"""What is asked for, held against what can be: whatever cannot is refused in our words."""

from __future__ import annotations

import functools
import inspect
import math
import numbers
import os
from collections.abc import Callable, Iterable, Mapping
from typing import Any, TypeVar

from ._errors import TussockError

Call = TypeVar("Call", bound=Callable[..., Any])


def held(error: type[TussockError], **checks: Callable[..., Any]) -> Callable[[Call], Call]:
    """Arguments of a function pass a check each where they are given; ``None`` where it is the default does so unseen."""

    def around(call: Call) -> Call:
        asked = inspect.signature(call)

        @functools.wraps(call)
        def checked(*args: Any, **kwargs: Any) -> Any:
            bound = asked.bind(*args, **kwargs)
            for name, check in checks.items():
                value = bound.arguments.get(name, asked.parameters[name].default)
                if value is not None or asked.parameters[name].default is not None:
                    bound.arguments[name] = check(error, name, value)
            return call(*bound.args, **bound.kwargs)

        return checked  # type: ignore[return-value]

    return around


def shown(value: Any) -> str:
    """A value in a sentence: itself where it is short, else its type."""
    told = repr(value) if isinstance(value, (str, bytes, numbers.Number, type(None))) else ""
    return told if 0 < len(told) <= 60 else f"of the type {type(value).__name__}"


def refused(error: type[TussockError], name: str, value: Any, expected: str, kind: str, hint: str | None = None) -> TussockError:
    """The sentence of every refusal here."""
    return error(f"{name} is {shown(value)}, expected {expected}", kind, hint)


def number(error: type[TussockError], name: str, value: Any, low: float = -math.inf, high: float = math.inf) -> float:
    """A finite number in a range."""
    try:
        found = float(value) if isinstance(value, numbers.Real) and not _is_truth(value) else math.nan
    except OverflowError:
        found = math.nan
    if math.isfinite(found) and low <= found <= high:
        return found
    raise refused(error, name, value, f"a number{_range(low, high)}", "out_of_range")


def whole(error: type[TussockError], name: str, value: Any, low: int = 0, high: int = 2**64 - 1) -> int:
    """A whole number in a range."""
    if isinstance(value, numbers.Integral) and not _is_truth(value) and low <= int(value) <= high:
        return int(value)
    raise refused(error, name, value, f"a whole number{_range(low, high)}", "out_of_range")


def truth(error: type[TussockError], name: str, value: Any) -> bool:
    """True or false."""
    if _is_truth(value):
        return bool(value)
    raise refused(error, name, value, "True or False", "value")


def text(error: type[TussockError], name: str, value: Any) -> str:
    """A text that can be written down."""
    if isinstance(value, str) and not any("\ud800" <= letter <= "\udfff" for letter in value):
        return str(value)
    raise refused(error, name, value, "a text", "value")


def word(error: type[TussockError], name: str, value: Any, words: Iterable[str], kind: str = "value") -> str:
    """One of some words."""
    listed = list(words)
    if isinstance(value, str) and value in listed:
        return value
    raise refused(error, name, value, f"one of {', '.join(listed)}", kind)


def numbers_of(error: type[TussockError], name: str, value: Any, count: int | None = None) -> list[float]:
    """Finite numbers, so many where that is given."""
    listed = items(error, name, value, "numbers", count)
    return [number(error, f"{name}[{place}]", one) for place, one in enumerate(listed)]


some = functools.partial(number, low=0.0)
share = functools.partial(number, low=0.0, high=1.0)
count = functools.partial(whole, low=1)
pair = functools.partial(numbers_of, count=2)


def one_of(words: Iterable[str], kind: str = "value") -> Callable[..., str]:
    """A check of words."""
    return functools.partial(word, words=words, kind=kind)


def items(error: type[TussockError], name: str, value: Any, expected: str, count: int | None = None) -> list[Any]:
    """What a list, a tuple, an array or a series holds; neither texts nor tables."""
    is_text_or_table = isinstance(value, (str, bytes, bytearray, memoryview, Mapping)) or getattr(value, "ndim", 1) != 1
    if is_text_or_table or not hasattr(value, "__iter__"):
        raise refused(error, name, value, expected, "value")
    listed = list(value)
    if count not in (None, len(listed)):
        raise error(f"{name} has {len(listed)} values, expected {count} {expected}", "value")
    return listed


def table(error: type[TussockError], name: str, value: Any, expected: str) -> Mapping[Any, Any]:
    """A mapping."""
    if isinstance(value, Mapping):
        return value
    raise refused(error, name, value, expected, "value")


def path(error: type[TussockError], name: str, value: Any, expected: str = "a path") -> str:
    """A path that a file can have."""
    if isinstance(value, (str, os.PathLike)):
        found = os.fspath(value)
        if isinstance(found, str) and found and "\0" not in found and _is_encodable(found):
            return found
    raise refused(error, name, value, expected, "value")


def instance(error: type[TussockError], name: str, value: Any, kind: type, hint: str) -> Any:
    """Something of ours."""
    if isinstance(value, kind):
        return value
    raise refused(error, name, value, kind.__name__, "value", hint)


def _is_encodable(path: str) -> bool:
    try:
        return bool(os.fsencode(path))
    except UnicodeEncodeError:
        return False


def _is_truth(value: Any) -> bool:
    return isinstance(value, bool) or type(value).__name__ == "bool"


def _range(low: float, high: float) -> str:
    if low == -math.inf and high == math.inf:
        return ""
    return f" of {low} or more" if high in (math.inf, 2**64 - 1) else f" from {low} to {high}"
