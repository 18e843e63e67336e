"""Stored words keep; what is shown for them is read back as them, and never stands for two."""

from paddock_tui.records.errors import InputError
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.session_parts import INCIDENTS, LOOKS, SYMPTOMS
from paddock_tui.records.shown_words import SHOWN, is_named, shown

LISTS = (SYMPTOMS, LOOKS, INCIDENTS)


def test_every_word_that_is_shown_otherwise_is_a_word_of_files() -> None:
    assert set(SHOWN) <= {one for words in LISTS for one in words}


def test_no_two_words_of_a_list_read_the_same_and_none_has_a_comma() -> None:
    for words in LISTS:
        forms = [form for one in words for form in {one, shown(one).casefold()}]
        assert len(set(forms)) == len(forms)
        assert not any("," in shown(one) for one in words)


def test_a_symptom_is_typed_and_picked_in_either_word_and_stored_in_the_old_one() -> None:
    field = field_at("session", ("symptoms", "1", "what"))
    assert field is not None
    shape = field.shape
    for typed in ("bars wobble", "headshake or wobble", "heads", "Bars W"):
        assert shape.read(typed) == "bars wobble"
    assert shape.dump(shape.read("arm pump")) == "arms sore"
    assert "arm pump" in shape.words()
    assert "arms sore" not in shape.words()
    refused = shape.read("rear steps out")
    assert isinstance(refused, InputError)
    assert refused.mend == "type more of it: rear steps out on entry, rear steps out on exit"
    lost = shape.load("headshake or wobble")
    assert isinstance(lost, InputError)
    assert "bars wobble" in lost.expected


def test_tyre_looks_are_a_list_in_either_words() -> None:
    field = field_at("session", ("look", "front", "seen"))
    assert field is not None
    value = field.shape.read("fine rolled, new skin")
    assert value == ("fine balls", "new skin")
    assert field.shape.show(value) == "fine rolled edges (normal), shiny: not scrubbed in"
    refused = field.shape.read("bald")
    assert isinstance(refused, InputError)
    assert "at the wear indicators" in refused.expected


def test_a_reason_names_a_symptom_in_either_word() -> None:
    assert is_named("tucks", "for Front tucks, corner 6")
    assert is_named("tucks", "it tucks there")
    assert not is_named("tucks", "chatters")
