"""What stands for a function or a class until something is asked of it."""

import types

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any


class StandIn:
    """Stands for a function or class that is not loaded: called, looked into or asked, it loads it."""

    __slots__ = ("__find", "__is_loaded")

    def __init__(self, find: "Callable[[], Any]", is_loaded: "Callable[[], bool]") -> None:
        self.__find, self.__is_loaded = find, is_loaded

    def __call__(self, *given: "Any", **named: "Any") -> "Any":
        """Call what this stands for."""
        return self.__find()(*given, **named)

    def __getattr__(self, name: str) -> "Any":
        if name == "__set_name__":  # asked of whatever stands in a class, and by it alone
            raise AttributeError(name)
        return getattr(self.__find(), name)

    def __instancecheck__(self, one: object) -> bool:
        """Return whether one is of this class: of one that is not loaded there are none."""
        return self.__is_loaded() and isinstance(one, self.__find())

    def __subclasscheck__(self, one: type) -> bool:
        """Return whether a class stands on this one, which none does while it is not loaded."""
        return self.__is_loaded() and issubclass(one, self.__find())

    def __mro_entries__(self, _: tuple[object, ...]) -> tuple[type, ...]:
        """Have a class that stands on this one wait as well."""
        return (_Waiting,)

    def __resolved__(self) -> "Any":
        """Return what this stands for."""
        return self.__find()


class _Waits(type):
    """Makes a stand-in in place of a class: the class is made once what it stands on is asked for."""

    def __new__(mcs, name: str, _: tuple[type, ...], body: dict[str, "Any"]) -> "Any":
        """Return a stand-in for the class."""
        made: list[type] = []

        def find() -> type:
            if not made:
                above = tuple(
                    one.__resolved__() if isinstance(one, StandIn) else one for one in body["__orig_bases__"]
                )
                own = {key: value for key, value in body.items() if key != "__orig_bases__"}
                made.append(types.new_class(name, above, {}, lambda space: space.update(own)))
            return made[0]

        return StandIn(find, lambda: bool(made))


_Waiting: "Any" = type.__new__(_Waits, "_Waiting", (), {})
"""What such a class stands on until then."""
