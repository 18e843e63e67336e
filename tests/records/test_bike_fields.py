"""What a bike adds to a record is found by its place, and is of the bike and damping mode asked for."""

import copy

import attrs

from paddock_tui.records import fields_of_record
from paddock_tui.records.differences import changed_values, session_differences
from paddock_tui.records.fields_of_record import SET_UP, Field, _of_bike, field_at, fields
from paddock_tui.records.session import Session
from tests.sample import bike, records


def _sessions() -> list[Session]:
    return [one for _, one in records(Session)]


def _said(field: Field) -> tuple[object, ...]:
    shape = field.shape
    read = tuple(
        str(shape.load(raw)) for raw in ("", "x", "3", 3, 2.5, True, "by-hand", "rain", "road", None)
    )
    return field.path, field.label, field.section, type(shape), read, field.help, field.call, field.carry


def test_each_place_has_the_field_that_stands_there_first() -> None:
    for own in _sessions():
        one = bike(own.bike or "")
        for damping in (None, *one.damping, own.setup.damping):
            at = attrs.evolve(own, setup=attrs.evolve(own.setup, damping=damping))
            listed = list(_of_bike(at, one))
            for field in listed:
                first = next(each for each in listed if each.path == field.path)
                found = field_at("session", field.path, at, one)
                assert found is not None
                assert _said(found) == _said(first)


def test_the_fields_of_a_set_up_rest_on_nothing_else_of_its_session() -> None:
    for own in _sessions():
        one = bike(own.bike or "")
        whole, bare = (fields("session", each, one) for each in (own, Session(setup=own.setup)))
        of_both = [[field for field in found if field.path[0] == SET_UP] for found in (whole, bare)]

        assert of_both[0]
        assert [_said(field) for field in of_both[0]] == [_said(field) for field in of_both[1]]


def test_what_is_kept_of_bikes_is_never_another_ones_nor_more_than_so_many() -> None:
    own = next(one for one in _sessions() if one.bike == "otter")
    name = next(iter(bike("otter").controls))
    for turn in range(3 * fields_of_record._MOST):
        one = bike("otter")
        controls = {**one.controls, name: attrs.evolve(one.controls[name], call=f"t{turn}")}
        found = field_at("session", (SET_UP, "controls", name), own, attrs.evolve(one, controls=controls))
        assert found is not None
        assert found.call == f"t{turn}"
        assert len(fields_of_record._BY_PATH) <= fields_of_record._MOST


def test_what_differs_is_the_same_whether_values_are_shared_or_made_anew() -> None:
    found = _sessions()
    for before in found:
        for after in found:
            anew = copy.deepcopy(after)
            assert list(changed_values(before, after)) == list(changed_values(before, anew))
            assert session_differences(before, after, bike("otter")) == session_differences(
                before, anew, bike("otter")
            )
        assert list(changed_values(before, before)) == []
