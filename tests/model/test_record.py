"""Our quick dataclasses are the library's: what one does the other does."""

from __future__ import annotations

import copy
import dataclasses
import pickle
from collections.abc import Callable
from typing import Any, ClassVar, Generic, NamedTuple, TypeVar

import pytest

from spoonproof.model import record

T = TypeVar("T")


@record.dataclass(frozen=True, slots=True)
class Frozen:
    """A frozen one."""

    name: str
    size: int = 3
    parts: dict[str, int] = record.field(default_factory=dict)
    memory: list[int] = record.field(default_factory=list, compare=False, repr=False)
    kinds: ClassVar[tuple[str, ...]] = ("a",)

    @property
    def double(self) -> int:
        """Twice the size."""
        return 2 * self.size


@record.dataclass(slots=True)
class Open:
    """One that may be changed."""

    name: str = ""
    parts: list[str] = record.field(default_factory=list)


@record.dataclass(frozen=True)
class Of(Generic[T]):
    """One without slots, whose alias is called."""

    value: T


@record.dataclass(frozen=True, slots=True)
class More(Frozen):
    """One that inherits."""

    last: bool = False


@record.dataclass(frozen=True, eq=False)
class Self_:  # noqa: N801
    """One that is told apart by identity."""

    name: str


@record.dataclass(frozen=True, slots=True)
class Counted:
    """One with something to do after it was made."""

    made: list[str]

    def __post_init__(self) -> None:
        self.made.append("made")


def test_values_defaults_and_order() -> None:
    one = Frozen("a")
    assert (one.name, one.size, one.parts, one.memory, one.double) == ("a", 3, {}, [], 6)
    assert Frozen("a", 4, {"x": 1}) == Frozen(size=4, parts={"x": 1}, name="a")
    assert Frozen("a").parts is not Frozen("a").parts
    wrongly: tuple[tuple[Any, ...], ...] = ((), ("a", 1, {}, [], 9))
    for wrong in wrongly:
        with pytest.raises(TypeError):
            Frozen(*wrong)


def test_equal_by_value_and_hashed_by_value() -> None:
    assert Frozen("a", memory=[1]) == Frozen("a", memory=[2]) != Frozen("b")
    assert More("a") != Frozen("a") and More("a", last=True) == More("a", last=True)
    assert hash(Of(3)) == hash(Of(3)) and len({Of(3), Of(3), Of(4)}) == 2
    assert Self_("a") != Self_("a") and len({Self_("a"), Self_("a")}) == 2
    with pytest.raises(TypeError):
        hash(Open())


def test_frozen_and_without_other_attributes() -> None:
    one: Any = Frozen("a")
    changes: tuple[Callable[[], None], ...] = (
        lambda: setattr(one, "name", "b"),
        lambda: delattr(one, "name"),
        lambda: setattr(one, "new", 1),
    )
    for change in changes:
        with pytest.raises(AttributeError):
            change()
    assert not hasattr(one, "__dict__")
    loose: Any = Open()
    loose.name = "b"
    with pytest.raises(AttributeError):
        loose.new = 1
    assert Of[int](3) == Of(3)


def test_shown_like_the_library_shows_it() -> None:
    assert repr(Frozen("a", memory=[1])) == "Frozen(name='a', size=3, parts={})"
    assert repr(More("a")) == "More(name='a', size=3, parts={}, last=False)"


@pytest.mark.parametrize("replace", [record.replace, dataclasses.replace])
def test_replaced_by_ours_and_by_the_library(replace: Any) -> None:
    assert replace(Frozen("a", 4), size=5) == Frozen("a", 5)
    assert replace(More("a"), last=True) == More("a", last=True)
    with pytest.raises(TypeError):
        replace(Frozen("a"), nothing=1)


def test_the_library_knows_our_fields() -> None:
    assert [f.name for f in dataclasses.fields(More)] == ["name", "size", "parts", "memory", "last"]
    assert dataclasses.fields(Frozen)[1].default == 3 and dataclasses.fields(Frozen)[2].default_factory is dict
    assert dataclasses.is_dataclass(Frozen) and dataclasses.asdict(Of(3)) == {"value": 3}


def test_copied_and_pickled() -> None:
    for one in (Frozen("a", parts={"x": 1}), More("a", last=True), Open("a", ["b"]), Of(3)):
        assert copy.deepcopy(one) == copy.copy(one) == pickle.loads(pickle.dumps(one)) == one


def test_what_comes_after_and_what_can_change() -> None:
    assert Counted([]).made == ["made"] and Counted(made=["x"]).made == ["x", "made"]
    with pytest.raises(ValueError, match="default_factory"):

        @record.dataclass
        class _Wrong:
            parts: list[str] = []  # noqa: RUF012 - what is refused


def test_a_match_statement_takes_it_apart() -> None:
    match Frozen("a", 7):
        case Frozen(name, size):
            assert (name, size) == ("a", 7)
        case _:
            pytest.fail("not matched")


class Ours(record.NamedTuple):
    """A named tuple made here."""

    name: str
    size: int = 3

    @property
    def double(self) -> int:
        """Twice the size."""
        return 2 * self.size


class Theirs(NamedTuple):
    """The same as the library makes it."""

    name: str
    size: int = 3


@pytest.mark.parametrize("kind", [Ours, Theirs])
def test_a_named_tuple_does_what_the_librarys_does(kind: type[Ours]) -> None:
    pickled = pickle.loads(pickle.dumps(kind("a", size=4)))  # the first one made, by whoever comes first
    one = kind("a", size=4)
    assert pickled == one == ("a", 4) and type(pickled) is kind
    assert (one.name, one.size, kind("b").size, len(one)) == ("a", 4, 3, 2)
    assert repr(one) == f"{kind.__name__}(name='a', size=4)"
    assert one._replace(size=5) == ("a", 5) and type(one._replace(size=5)) is kind
    assert one._asdict() == {"name": "a", "size": 4}
    assert kind._make(["c", 1]).name == "c"
    assert (kind._fields, kind._field_defaults, kind.__match_args__) == (("name", "size"), {"size": 3}, kind._fields)
    assert copy.copy(one) == one and hash(one) == hash(("a", 4))
    make: Any = kind
    for given, named in [((), {}), (("a", 1, 2), {}), (("a",), {"colour": 1})]:
        with pytest.raises(TypeError):
            make(*given, **named)
    with pytest.raises(ValueError, match="colour"):
        one._replace(colour=1)  # type: ignore[call-arg]  # which is what is tried
    with pytest.raises(AttributeError):
        one.colour = 1  # type: ignore[attr-defined]  # as above
    assert Ours("a", 2).double == 4


def test_a_named_tuple_with_a_gap_in_its_defaults_or_with_other_bases_is_refused() -> None:
    made_by: Any = type(record.NamedTuple)
    with pytest.raises(TypeError, match="without a default"):
        made_by("Gap", (record.NamedTuple,), {"__annotations__": {"a": int, "b": int}, "a": 1})
    with pytest.raises(TypeError, match="nothing else"):
        made_by("Two", (record.NamedTuple, int), {"__annotations__": {"a": int}})
