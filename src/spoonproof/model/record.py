"""``dataclass``, ``field``, ``replace`` and ``NamedTuple`` as the standard library has them, made quickly.

A command makes two hundred of these classes before it does anything, and the library's own decorator compiles six
methods for each, used or not: a quarter of the time from start to finding. Here one method is compiled, when the
first object is made, and the others are shared. Type checkers see the library's own, and ``dataclasses.fields`` and
``dataclasses.replace`` know our classes too. What we don't use is refused: order, keyword-only fields, InitVar.
The library's named tuples compile a function each as well: a twelfth of a start for sixty of them.
"""

from __future__ import annotations

from operator import attrgetter
from typing import TYPE_CHECKING

__all__ = ["NamedTuple", "dataclass", "field", "names_and_defaults", "replace"]

if TYPE_CHECKING:
    from dataclasses import dataclass, field, replace
    from typing import NamedTuple

    def names_and_defaults(kind: type) -> tuple[tuple[str, ...], tuple[object, ...]]:
        """The names of a class's fields in order, and the defaults of its last ones."""
        ...

else:
    from _collections import _tuplegetter  # what the library's own named tuples read by

    _NONE = object()

    laid_down = {}
    """Initialisers as they were compiled when the wheel was built, by their source (see ``expressions``)."""
    noted = None
    """Where what is compiled is noted, None where nobody wants to know."""

    class FrozenError(AttributeError):
        """A frozen object was to be changed."""

    class _Field:
        """How a field was asked for."""

        __slots__ = ("compare", "default", "factory", "repr")

        def __init__(self, default, factory, compare, shown):
            self.default, self.factory, self.compare, self.repr = default, factory, compare, shown

    def field(*, default=_NONE, default_factory=_NONE, compare=True, repr=True):
        """A field with more to it than a default."""
        return _Field(default, default_factory, compare, repr)

    def replace(record, /, **changes):
        """A copy with other values in some fields."""
        for name in record.__record_fields__:
            if name not in changes:
                changes[name] = getattr(record, name)
        return record.__class__(**changes)

    def names_and_defaults(kind):
        """The names of a class's fields in order, and the defaults of its last ones."""
        asked = kind.__record_fields__.values()
        made = [found.default if found.factory is _NONE else found.factory() for found in asked]
        return tuple(kind.__record_fields__), tuple(default for default in made if default is not _NONE)

    def dataclass(cls=None, /, *, frozen=False, slots=False, eq=True):
        """The class with what its annotations ask for."""
        if cls is None:
            return lambda found: _made(found, frozen, slots, eq)
        return _made(cls, frozen, slots, eq)

    class _Naming(type):
        """What makes a class over ``NamedTuple`` a tuple with names."""

        def __new__(meta, name, bases, own):
            if bases == ():
                return super().__new__(meta, name, bases, own)
            if bases != (NamedTuple,):
                raise TypeError(f"{name}: a named tuple inherits from nothing else")
            names = tuple(own.get("__annotations__", ()))
            defaults = {each: own.pop(each) for each in names if each in own}
            if tuple(defaults) != names[len(names) - len(defaults) :]:
                raise TypeError(f"{name}: a field without a default after one with one")
            own |= {each: _tuplegetter(at, None) for at, each in enumerate(names)}
            own |= {"__slots__": (), "_fields": names, "__match_args__": names, "_field_defaults": defaults}
            shared = (("__repr__", _tuple_repr), ("__getnewargs__", _values), ("_replace", _tuple_replace))
            for method, usual in (*shared, ("_asdict", _tuple_dict), ("_make", classmethod(tuple.__new__))):
                own.setdefault(method, usual)
            made = type(name, (tuple,), own)
            made.__new__ = staticmethod(_first_new(made))
            return made

    class NamedTuple(metaclass=_Naming):
        """A tuple whose places have names."""

    def _first_new(cls):
        def __new__(asked, /, *values, **named):  # noqa: N807 - made here, hung on a class
            new = _compiled_new(cls)
            if cls.__dict__["__new__"].__func__ is __new__:
                cls.__new__ = staticmethod(new)
            return new(asked, *values, **named)

        return __new__

    def _compiled_new(cls):
        names = ", ".join(cls._fields)
        source = f"def __new__(_cls, {names}): return _new(_cls, ({names}{',' if names else ''}))\n"
        code = laid_down.get(source) or compile(source, "<record>", "exec")
        if noted is not None:
            noted[source] = code
        made = {}
        exec(code, {"_new": tuple.__new__}, made)  # our own field names alone
        new = made["__new__"]
        new.__defaults__ = tuple(cls._field_defaults.values())
        new.__qualname__ = f"{cls.__qualname__}.__new__"
        return new

    def _values(self):
        return tuple(self)

    def _tuple_repr(self):
        shown = ", ".join(f"{name}={value!r}" for name, value in zip(self._fields, self, strict=True))
        return f"{self.__class__.__name__}({shown})"

    def _tuple_replace(self, /, **changes):
        made = self._make([changes.pop(name, value) for name, value in zip(self._fields, self, strict=True)])
        if changes:
            raise ValueError(f"Got unexpected field names: {list(changes)!r}")
        return made

    def _tuple_dict(self):
        return dict(zip(self._fields, self, strict=True))

    def _made(cls, frozen, slots, eq):
        fields = {}
        for base in reversed(cls.__mro__[1:]):
            fields |= base.__dict__.get("__record_fields__", {})
        inherited = frozenset(fields)
        asked = cls.__annotations__  # its own alone, since Python 3.10
        for name in [name for name, kind in asked.items() if not str(kind).startswith("ClassVar")]:
            found = cls.__dict__.get(name, _NONE)
            if found.__class__ is not _Field:
                if found.__class__ in (list, dict, set):
                    raise ValueError(f"{cls.__qualname__}.{name}: a default that can change; use default_factory")
                found = _Field(found, _NONE, True, True)
            if found.default is not _NONE:
                setattr(cls, name, found.default)
            elif name in cls.__dict__:
                delattr(cls, name)
            fields[name] = found
        if slots:
            cls = _with_slots(cls, fields, inherited)
        cls.__record_fields__ = fields
        cls.__dataclass_fields__ = _Fields()
        cls.__match_args__ = tuple(fields)
        _give(cls, "__init__", _first_init(cls, frozen))
        _give(cls, "__repr__", _repr)
        if eq:
            _give(cls, "__eq__", _comparing(cls, [name for name, found in fields.items() if found.compare], frozen))
        if frozen:
            cls.__setattr__ = cls.__delattr__ = _refuse
        if slots:
            _give(cls, "__reduce__", _reduce)
        return cls

    def _give(cls, name, method):
        if name not in cls.__dict__:
            setattr(cls, name, method)

    def _with_slots(cls, fields, inherited):
        own = dict(cls.__dict__)
        own["__slots__"] = tuple(name for name in fields if name not in inherited)
        for name in ("__dict__", "__weakref__", *fields):
            own.pop(name, None)
        made = type(cls)(cls.__name__, cls.__bases__, own)
        made.__qualname__ = cls.__qualname__
        return made

    def _first_init(cls, frozen):
        def __init__(self, /, *values, **named):  # noqa: N807 - made here, hung on a class
            init = _compiled(cls, frozen)
            if cls.__dict__.get("__init__") is __init__:
                cls.__init__ = init
            init(self, *values, **named)

        return __init__

    def _compiled(cls, frozen):
        names = {"_none": _NONE, "_put": object.__setattr__}
        heads, lines = [], []
        for name, found in cls.__record_fields__.items():
            value = name
            if found.factory is not _NONE:
                names[f"_f_{name}"] = found.factory
                heads.append(f"{name}=_none")
                value = f"_f_{name}() if {name} is _none else {name}"
            elif found.default is not _NONE:
                names[f"_d_{name}"] = found.default
                heads.append(f"{name}=_d_{name}")
            else:
                heads.append(name)
            slot = getattr(cls, name, None) if name in getattr(cls, "__slots__", ()) else None
            if slot is not None:
                names[f"_s_{name}"] = slot.__set__
                lines.append(f" _s_{name}(self, {value})")
            elif frozen:
                lines.append(f" _put(self, {name!r}, {value})")
            else:
                lines.append(f" self.{name} = {value}")
        if hasattr(cls, "__post_init__"):
            lines.append(" self.__post_init__()")
        head = ", ".join(["self", *heads])
        made = {}
        source = f"def __init__({head}):\n" + "\n".join(lines or [" pass"])
        code = laid_down.get(source) or compile(source, "<record>", "exec")
        if noted is not None:
            noted[source] = code
        exec(code, names, made)  # our own field names alone
        init = made["__init__"]
        init.__qualname__ = f"{cls.__qualname__}.__init__"
        return init

    def _comparing(cls, names, frozen):
        values = attrgetter(*names) if len(names) > 1 else lambda record: tuple(getattr(record, n) for n in names)

        def __eq__(self, other):  # noqa: N807 - made here, hung on a class
            if other.__class__ is not self.__class__:
                return NotImplemented
            return values(self) == values(other)

        if "__hash__" not in cls.__dict__ or cls.__dict__["__hash__"] is None:
            if frozen:

                def __hash__(self):  # noqa: N807 - made here, hung on a class
                    return hash(values(self))

                cls.__hash__ = __hash__
            else:
                cls.__hash__ = None
        return __eq__

    def _repr(self):
        shown = ", ".join(f"{name}={getattr(self, name)!r}" for name, f in self.__record_fields__.items() if f.repr)
        return f"{self.__class__.__qualname__}({shown})"

    def _refuse(self, name, *_):
        raise FrozenError(f"{self.__class__.__qualname__} is frozen: {name!r} can't be changed")

    def _reduce(self):
        return self.__class__, tuple([getattr(self, name) for name in self.__record_fields__])

    class _Fields:
        """The library's description of the fields, made when somebody asks for it."""

        def __get__(self, _record, cls):
            import dataclasses

            own = {}
            for name, found in cls.__record_fields__.items():
                given = {"default": found.default} if found.default is not _NONE else {}
                if found.factory is not _NONE:
                    given = {"default_factory": found.factory}
                made = dataclasses.field(compare=found.compare, repr=found.repr, **given)
                made.name, made._field_type = name, dataclasses._FIELD
                own[name] = made
            return own
