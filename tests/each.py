"""Many short cases in one test: a case of a sentence takes a millisecond, a test of its own two and a half more.

Every case is run, and all that fail are told, each with what it was given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from inspect import Parameter, Signature, signature
from typing import Any


def each(names: str | Sequence[str], rows: Iterable[Any]) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """As ``pytest.mark.parametrize``, in one test. For cases that leave nothing behind: all have the same fixtures."""
    keys = [name.strip() for name in names.split(",")] if isinstance(names, str) else list(names)
    cases = [dict(zip(keys, row if len(keys) > 1 else (row,), strict=True)) for row in rows]
    assert cases, "a test of nothing can't fail"

    def over(test: Callable[..., None]) -> Callable[..., None]:
        def all_of_them(**fixtures: Any) -> None:
            wrong = []
            for case in cases:
                try:
                    test(**fixtures, **case)
                except Exception as error:
                    error.add_note(f"given {case!r}")
                    wrong.append(error)
            if wrong:
                raise ExceptionGroup(f"{len(wrong)} of {len(cases)} cases", wrong)

        # Not functools.wraps: pytest would look through it at all arguments, and ask for fixtures of their names.
        for name in ("__name__", "__qualname__", "__module__", "__doc__"):
            setattr(all_of_them, name, getattr(test, name))
        asked = [Parameter(name, Parameter.KEYWORD_ONLY) for name in signature(test).parameters if name not in keys]
        all_of_them.__signature__ = Signature(asked)  # type: ignore[attr-defined]  # where pytest looks for fixtures
        return all_of_them

    return over
