"""Forms of a page are read as a browser would send them."""

from page_forms import forms_of, links_of

PAGE = """
<form method="post" action="tally"><input name="id" value="A"><input type="hidden" name="seen" value="1">
<input type="checkbox" name="round" value="true" checked><input type="checkbox" name="open">
<select name="edge"><option value="">none</option><option value="square" selected>square</option></select>
<textarea name="note">
two
lines</textarea><input name="off" disabled><input type="file" name="file">
<button name="do" value="out">Out</button></form>
<form id="find" action="/find"></form><input form="find" name="find" value="F12">
"""


def test_fields_are_sent_as_they_stand() -> None:
    """What is chosen and ticked is sent; what is disabled is not."""
    form, find = forms_of(PAGE, "http://localhost/jobs/1/x")
    assert (form.action, form.method) == ("http://localhost/jobs/1/tally", "post")
    assert form.fields == (
        ("id", "A"),
        ("seen", "1"),
        ("round", "true"),
        ("edge", "square"),
        ("note", "two\nlines"),
    )
    assert form.hidden == {"seen"}
    assert form.ticks == (("round", "true"), ("open", "on"))
    assert form.choices == (("edge", ("", "square")),)
    assert form.files == ("file",)
    assert form.buttons == (("do", "out"),)
    assert (find.method, find.fields) == ("get", (("find", "F12"),))


def test_a_form_is_filled_in() -> None:
    """One field otherwise, and one more."""
    form, _ = forms_of(PAGE, "http://localhost/")
    filled = form.filled(id="B", key="7")
    assert filled.data()["id"] == ["B"]
    assert filled.data()["key"] == ["7"]
    assert filled.data()["note"] == ["two\nlines"]


def test_links_within_the_app_are_read() -> None:
    """Once each, without the place on the page."""
    page = '<a href="/a#x">1</a><a href="/a">2</a><a href="b?c=1">3</a><a href="https://example.org/">4</a>'
    assert links_of(page, "http://localhost/z/") == ("http://localhost/a", "http://localhost/z/b?c=1")
