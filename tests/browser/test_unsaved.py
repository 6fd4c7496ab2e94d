"""What was typed into the long forms and not saved is found again."""

from playwright.sync_api import Page, expect

from browser.doing import begin_job, go_to, hit, keys, press, settled

PUT_BACK = "Put back what I had typed"


def job_url(page: Page) -> str:
    """Begin a job; give its address."""
    begin_job(page, "back room")
    return page.url


def test_a_surface_that_was_left_is_put_back(page: Page) -> None:
    """With the door, whose row the server made; once it is saved, nothing is offered any more."""
    url = job_url(page)
    page.goto(f"{url}/surfaces/new")
    hit(page.get_by_role("button", name="Add a door or window"))
    settled(page)
    page.locator("[name=width]").fill("12 ft")
    page.locator("[name=height]").fill("8 ft")
    page.locator("[name='framing.first_centre']").fill("16")
    page.locator("[name='framing.spacing']").fill("16")
    page.locator("[name='opening.0.left']").fill("3 ft")
    page.locator("[name='opening.0.bottom']").fill("0")
    page.locator("[name='opening.0.width']").fill("2 ft 8")
    page.locator("[name='opening.0.height']").fill("6 ft 8")
    settled(page)
    go_to(page, "Tally")
    page.goto(f"{url}/surfaces/new")
    page.reload()
    expect(page.locator("[name=width]")).to_have_value("")
    hit(page.get_by_role("button", name=PUT_BACK))
    expect(page.locator("#surface [name='opening.0.left']")).to_have_value("3 ft")
    expect(page.locator("#surface [name=width]")).to_have_value("12 ft")
    expect(page.get_by_role("button", name=PUT_BACK)).to_have_count(0)
    settled(page)
    if keys(page).is_visible():
        press(page, "hide these keys")
    hit(page.get_by_role("button", name="Save", exact=True))
    expect(page.get_by_role("heading", level=2, name="wall")).to_be_visible()
    page.goto(f"{url}/surfaces/new")
    expect(page.get_by_role("button", name=PUT_BACK)).to_have_count(0)


def test_rules_that_were_left_are_put_back_or_left_out(page: Page) -> None:
    """As whoever comes back wants it."""
    url = job_url(page)
    page.goto(f"{url}/rules")
    page.locator("[name='rules.stagger']").fill("2 ft")
    go_to(page, "Tally")
    page.goto(f"{url}/rules")
    expect(page.get_by_role("button", name=PUT_BACK)).to_be_visible()
    hit(page.get_by_role("button", name="Leave it out"))
    expect(page.get_by_role("button", name=PUT_BACK)).to_have_count(0)
    page.reload()
    expect(page.locator("[name='rules.stagger']")).to_have_value("")
    expect(page.get_by_role("button", name=PUT_BACK)).to_have_count(0)
