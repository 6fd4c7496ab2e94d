"""Forms of a page filled in as somebody might, and as nobody should."""

from dataclasses import replace

from hypothesis import strategies as st

from page_forms import Form
from property.bad_requests import VALUES

_WORDS = ("A", "B", "C", "D", "F12", "wall", "back wall", "")
_NUMBERS = ("96", "97", "5-1/4", "5", "3/4", "10", "12 ft", "8 ft", "2", "1", "0", "")
_NAMED = frozenset({"id", "lot", "species", "note", "what", "name", "find", "tone", "flaws", "wood"})
_MOST_CHANGES = 5


def filled(form: Form, data: st.DataObject) -> Form:
    """Fill a form in: a few fields otherwise, ticks set or not, and sent by one of its buttons."""
    kept = list(form.fields)
    options = dict(form.choices)
    typed = [place for place, (name, _) in enumerate(kept) if name not in form.hidden]
    for _ in range(data.draw(st.integers(0, _MOST_CHANGES), label="changes") if typed else 0):
        place = data.draw(st.sampled_from(typed), label="field")
        name, value = kept[place]
        usual = _WORDS if name.rsplit(".", 1)[-1] in _NAMED else _NUMBERS
        kept[place] = (name, data.draw(st.sampled_from(options.get(name) or (value, *usual)), label=name))
    unset = [tick for tick in form.ticks if tick not in kept]
    more = data.draw(st.booleans(), label="a tick more")
    if unset and more:
        tick = data.draw(st.sampled_from(unset), label="tick")
        kept.append(tick)
    return _by_a_button(replace(form, fields=tuple(kept)), data)


def spoilt(form: Form, data: st.DataObject) -> Form:
    """Fill one field of a form in badly, leave it out, or send it twice."""
    if not form.fields:
        return form
    place = data.draw(st.integers(0, len(form.fields) - 1), label="field")
    name, _ = form.fields[place]
    how = data.draw(st.sampled_from(("filled", "filled", "filled", "left out", "twice")), label="how")
    value = (name, data.draw(VALUES, label="value"))
    kept = [*form.fields[:place], *form.fields[place + 1 :]]
    match how:
        case "filled":
            kept.insert(place, value)
        case "twice":
            kept += [form.fields[place], value]
    return _by_a_button(replace(form, fields=tuple(kept)), data)


def _by_a_button(form: Form, data: st.DataObject) -> Form:
    if not form.buttons:
        return form
    return replace(form, fields=(*form.fields, data.draw(st.sampled_from(form.buttons), label="button")))
