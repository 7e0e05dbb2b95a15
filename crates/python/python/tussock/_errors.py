"""What can go wrong, and what to do about it.

Every exception carries the sentence that the command would print, its ``kind``, a ``hint`` where there is something to do,
and the single ``faults`` of a plan or of settings.
"""

from __future__ import annotations

from collections.abc import Sequence


class TussockError(Exception):
    """Anything that Tussock refuses.

    :ivar kind: name of the case in snake case, such as ``not_a_log``; it does not change with the wording.
    :ivar hint: what the user can do, or ``None``.
    :ivar faults: each fault of a plan or of settings as a sentence; else empty.

    >>> import tussock
    >>> try:
    ...     tussock.read(b"hello")
    ... except tussock.LogError as error:
    ...     print(error.kind)
    not_a_log
    """

    def __init__(
        self, message: str, kind: str = "other", hint: str | None = None, faults: Sequence[str] = ()
    ) -> None:
        super().__init__(message)
        self.kind: str = kind
        self.hint: str | None = hint
        self.faults: list[str] = list(faults)

    def __reduce__(self) -> tuple[object, ...]:
        return (type(self), (str(self), self.kind, self.hint, self.faults))


class LogError(TussockError):
    """A log, or columns that should be one, cannot be read."""


class PlanError(TussockError):
    """A plan cannot be read or used; ``faults`` lists everything at once."""


class SettingsError(TussockError):
    """Settings hold unknown keys or values that cannot be used."""


class AnalyseError(TussockError):
    """An analysis or inspection cannot go on."""


class CompareError(TussockError):
    """Two findings cannot be compared."""


class SimulateError(TussockError):
    """A machine, run or garden that cannot be."""


class ReportError(TussockError):
    """An output cannot be made, or saved findings cannot be read."""


class OutputError(TussockError):
    """A folder cannot be written to, or holds something that is not ours."""


class BatchError(TussockError):
    """A night shift cannot go on: the place of the gardens or the store cannot be used."""


class InternalError(TussockError):
    """A bug in Tussock; please report it with the log."""
