"""The form of the recording page: by pointer and finger, by drawing, by the line; complaints beside their
fields; a place for every field; for everybody."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from conftest import missing
from site_in_browser.recording import (
    EVERY_FIELD,
    Typist,
    begin,
    checked,
    focused,
    one_figure,
    open_file,
    settled,
    until,
    work,
)
from site_in_browser.test_every_page import AXE, TOO_WIDE

pytestmark = pytest.mark.browser


def box_of(page):
    """The rectangle in hand, on the screen."""
    return page.locator(".record-box-here").bounding_box()


def test_a_rectangle_is_drawn_moved_and_stretched_by_pointer_and_undone(opened, images):
    page = opened("record.html")
    begin(page, images)
    sheet = page.locator("#record-overlay").bounding_box()

    def at(x, y):
        return sheet["x"] + sheet["width"] * x, sheet["y"] + sheet["height"] * y

    def drag(start, end):
        page.mouse.move(*at(*start))
        page.mouse.down()
        page.mouse.move(*at((start[0] + end[0]) / 2, (start[1] + end[1]) / 2))
        page.mouse.move(*at(*end))
        page.mouse.up()

    regions = []
    for start, end in [((0.1, 0.1), (0.4, 0.4)), ((0.25, 0.25), (0.35, 0.3)), ((0.5, 0.45), (0.6, 0.6))]:
        drag(start, end)
        image = work(page)["source"]["plates"][0]["image"]
        regions.append([int(number) for number in image["region"].split(",")])
    # The page is 900 by 1250; a screen's point is more than one of its own.
    for found, wanted in zip(
        regions, [(90, 125, 270, 375), (180, 188, 270, 375), (180, 188, 360, 562)], strict=True
    ):
        assert all(abs(one - other) <= 4 for one, other in zip(found, wanted, strict=True)), regions
    assert len(work(page)["source"]["plates"]) == 1
    for region in (regions[1], regions[0]):
        page.keyboard.press("Control+z")
        assert work(page)["source"]["plates"][0]["image"]["region"] == ",".join(map(str, region))
    page.keyboard.press("Control+z")
    assert "plates" not in work(page)["source"]
    for _ in range(3):
        page.keyboard.press("Control+Shift+z")
    assert work(page)["source"]["plates"][0]["image"]["region"] == ",".join(map(str, regions[2]))
    # By keys: moved, stretched, the whole page, the next figure that was found.
    page.keyboard.press("F2")
    before = box_of(page)
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowDown")
    after = box_of(page)
    assert after["x"] > before["x"]
    assert after["height"] > before["height"]
    page.keyboard.press("w")
    assert "region" not in work(page)["source"]["plates"][0]["image"]
    page.keyboard.press("n")
    assert work(page)["source"]["plates"][0]["image"]["region"] == "90,109,323,443"
    # Undo goes on after the page was closed and opened again.
    settled(page)
    page.reload()
    # By the button, which waits: no key counts until the tab before has let go of the source.
    page.locator("#record-undo").click()
    assert "region" not in work(page)["source"]["plates"][0]["image"]


def test_a_finger_scrolls_the_page_until_it_is_told_to_mark(chromium, demo_site, images):
    context = chromium.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True)
    page = context.new_page()
    page.goto(f"{demo_site.as_uri()}/record.html")
    page.set_input_files("#record-choose-pages", images)
    until(page, "!document.getElementById('record-sheet').hidden")
    page.locator("#record-view").scroll_into_view_if_needed()
    control = context.new_cdp_session(page)

    def stroke():
        sheet = page.locator("#record-overlay").bounding_box()
        for kind, share in (("touchStart", 0.2), ("touchMove", 0.3), ("touchMove", 0.6), ("touchEnd", None)):
            point = {
                "x": sheet["x"] + sheet["width"] * (share or 0),
                "y": sheet["y"] + sheet["height"] * (share or 0),
            }
            points = [] if share is None else [point]
            control.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    stroke()
    assert "plates" not in work(page)["source"]
    page.get_by_role("button", name="Mark").tap()
    page.locator("#record-view").scroll_into_view_if_needed()
    stroke()
    x, y, width, height = map(int, work(page)["source"]["plates"][0]["image"]["region"].split(","))
    assert abs(x - 180) < 12
    assert abs(y - 250) < 12
    assert abs(width - 360) < 12
    assert abs(height - 500) < 12
    context.close()


def test_a_feature_is_chosen_by_its_drawing_with_keys(opened, images):
    page = opened("record.html")
    hands = one_figure(page, images)
    until(page, "document.querySelectorAll('.record-term svg').length > 5")
    held = page.get_attribute(".record-facet[aria-pressed=true]", "data-facet")
    until(page, f"document.querySelector('.record-term').dataset.term.startsWith('{held}/')")
    hands.press("ArrowDown")
    assert page.evaluate("document.activeElement.className").startswith("record-term")
    hands.press("ArrowRight")
    chosen = page.evaluate("document.activeElement.dataset.term")
    assert page.inner_text("#record-told").strip()
    hands.press("Enter")
    assert focused(page) == "record-line"
    assert work(page)["source"]["plates"][0]["features"] == ["neckline/square", chosen]
    assert chosen.startswith(f"{held}/")
    # The panel goes on to a facet of which nothing is said yet.
    assert page.get_attribute(".record-facet[aria-pressed=true]", "data-facet") not in (held, "neckline")


def test_a_feature_is_changed_in_its_own_fields_or_in_the_line(opened, images):
    page = opened("record.html")
    hands = one_figure(page, images)

    def features():
        return work(page)["source"]["plates"][0]["features"]

    hands.type("braid")
    hands.press("Enter", "Backspace")
    assert page.input_value("#record-line") == "braid trim"
    page.get_by_label("Where", exact=True).select_option("hem")
    page.get_by_label("Width").fill("1 in")
    page.get_by_label("How it was read").select_option("inferred")
    assert features()[1] == {"term": "trim/braid", "at": "hem", "width": "1 in", "reading": "inferred"}
    assert page.input_value("#record-line") == "braid trim @hem 1 in inferred"
    page.get_by_label("How it was read").select_option("")
    page.get_by_label("Width").fill("")
    page.get_by_label("Where", exact=True).select_option("")
    assert features() == ["neckline/square", "trim/braid"]
    page.get_by_label("Width").press("Enter")
    assert focused(page) == "record-line"
    assert page.is_hidden("#record-detail")
    # In the line: taken back, said otherwise; the other words of it stay.
    hands.press("Backspace")
    hands.type(" @cuff")
    hands.press("Enter")
    assert features() == ["neckline/square", {"term": "trim/braid", "at": "cuff"}]
    # A term takes the place of what cannot stand beside it.
    for line in ("v n", "no neck"):
        hands.type(line)
        hands.press("Enter")
    assert features() == [{"facet": "neckline", "none": True}, {"term": "trim/braid", "at": "cuff"}]
    # What is typed and not yet taken is taken when she goes on.
    hands.type("elb")
    hands.press("Control+Enter")
    until(page, "InPeriod.recording.get().source.plates.length === 2")
    assert features()[2] == "sleeve/elbow"


def test_pictures_keep_the_names_their_records_have(opened, images):
    """Two pages that would be called alike, and one of a name no record of ours would give."""
    page = opened("record.html")
    data = Path(images[0]).read_bytes()
    text = EVERY_FIELD.replace("every-field/p1.png", "every-field/Page One.png")
    open_file(Typist(page), [{"name": "every-field.yaml", "mimeType": "text/yaml", "buffer": text.encode()}])
    names = ["Page One.png", "a b.png", "A-b.png"]
    page.set_input_files(
        "#record-choose-pages", [{"name": name, "mimeType": "image/png", "buffer": data} for name in names]
    )
    until(page, "!document.getElementById('record-sheet').hidden")
    ours = """() => {
      const work = InPeriod.recording.get();
      return work.pages.map((page) => InPeriod.recordFigures.imageName(work, page));
    }"""
    before = page.evaluate(ours)
    assert sorted(before) == ["every-field/Page One.png", "every-field/a-b-b.png", "every-field/a-b.png"]
    # It turns to the page of the figure in hand.
    until(page, "document.querySelectorAll('.record-box-here').length === 1")
    for _ in range(2):
        page.keyboard.press("PageUp")
        page.wait_for_timeout(100)
        page.keyboard.press("Control+Enter")
    until(page, "InPeriod.recording.get().source.plates.length === 3")
    assert page.evaluate(ours) == before
    assert {plate["image"]["file"] for plate in work(page)["source"]["plates"]} == set(before)


def test_another_garment_of_a_figure_shares_its_picture_and_outfit(opened, images):
    page = opened("record.html")
    one_figure(page, images)
    page.click("#record-rest summary")
    page.get_by_role("button", name="Another garment of this figure").click()
    assert focused(page) == "record-garment"
    page.keyboard.type("hat")
    page.keyboard.press("Enter")
    first, second = work(page)["source"]["plates"]
    assert (first["outfit"], second["outfit"]) == ("p11-1", "p11-1")
    assert second["garment"] == "hat"
    assert second["image"]["region"] == first["image"]["region"]
    assert second["id"] == "p11-1-b"
    assert "features" not in second


SAID_AND_READ = """() => {
  const { vocabularyOf, lineOf, readLine, featureOf } = InPeriod.recordTerms;
  const given = InPeriod.data.recording;
  const plate = InPeriod.recordShape.sourceShape(given.shapes).fields.get("plates").item;
  const places = plate.fields.get("features").item.table.fields.get("at").words;
  const vocabulary = vocabularyOf(given.vocabulary, places);
  const extras = [
    {}, { width: "1 1/2 in" }, { width: "2.5 cm", count: 6 }, { colour: "dull red" }, { reading: "inferred" },
    { reading: "read", note: "a note; with a sign ?" },
  ];
  const features = [];
  for (const term of vocabulary.terms.values())
    for (const extra of extras)
      features.push(featureOf(term.key, { ...extra, at: places[features.length % (2 * places.length)] }));
  for (const facet of vocabulary.facets.keys())
    for (const more of [{ none: true }, { not_visible: true }, { not_visible: true, note: "cut off" }])
      features.push({ facet, ...more });
  const asked = { garment: "", held: [], uses: new Map() };
  const wrong = features
    .map((wanted) => [wanted, lineOf(wanted, vocabulary)])
    .map(([wanted, line]) => [wanted, line, (readLine(line, vocabulary, asked)[0] || {}).feature])
    .filter(([wanted, , found]) => JSON.stringify(found) !== JSON.stringify(wanted));
  return [features.length, wrong];
}"""


def test_the_line_says_whatever_a_feature_can_be(opened):
    """Every term with every place, width, count, colour, reading and note: said in the line and read back."""
    page = opened("record.html")
    number, wrong = page.evaluate(SAID_AND_READ)
    assert number > 1500
    assert wrong == []


# ---- complaints


def test_complaints_stand_beside_their_fields_in_the_checkers_words(
    opened, images, tmp_path, demo_folder, capsys
):
    page = opened("record.html")
    hands = one_figure(page, images)
    hands.type("braid; odd")
    hands.press("Enter")
    page.evaluate("InPeriod.recording.set(['source', 'plates', 0, 'features', 1, 'width'], 'wide'); 0")
    hands.press("F9")
    page.fill("#record-date", "some time or other")
    # Not for their number: while the figure was begun there may have been as many others.
    until(page, "document.getElementById('record-problems').innerText.includes('some time or other')")
    shown = page.locator(".record-problem").all_inner_texts()
    text = page.evaluate("InPeriod.recordSave.textOf(InPeriod.recording.get())")
    folder = tmp_path / "checked"
    (folder / "sources").mkdir(parents=True)
    shutil.copytree(demo_folder / "vocabulary", folder / "vocabulary")
    (folder / "inperiod.yaml").write_text("title: Tried\n", encoding="utf-8")
    name = work(page)["name"]
    (folder / f"sources/{name}.yaml").write_text(text, encoding="utf-8")
    (folder / f"images/{name}").mkdir(parents=True)
    shutil.copy(images[0], folder / f"images/{name}/p011.png")
    said = checked(folder, capsys)
    assert len(said) == 2
    assert all(any(each in words for words in shown) for each in said)
    date = page.locator("#record-date")
    assert date.get_attribute("aria-invalid") == "true"
    slip = date.get_attribute("aria-describedby").split()[-1]
    assert any(each in page.inner_text(f"#{slip}") for each in said)
    # It will not save what the checker refuses; the key leads to the field.
    hands.press("Control+s")
    assert "to put right first" in page.inner_text("#record-notice")
    page.get_by_role("button", name="Later").click()
    hands.press("F8")
    assert focused(page) == "record-date"
    page.keyboard.press("Control+a")
    hands.type("1912")
    until(page, "!document.getElementById('record-date').hasAttribute('aria-invalid')")


FIELDS = """() => {
  // Every place in the schema a single value can stand in, and whether the form has a field for it.
  const found = [];
  const walk = (shape, path) => {
    if (shape.kind === "fields") for (const [name, inner] of shape.fields) walk(inner, [...path, name]);
    else if (shape.kind === "either") walk(shape.table, path);
    else if (shape.kind === "list" && shape.item.kind !== "word") walk(shape.item, [...path, 0]);
    else found.push(path);
  };
  const source = InPeriod.recordShape.sourceShape(InPeriod.data.recording.shapes);
  for (const [name, inner] of source.fields) if (name !== "plates") walk(inner, ["source", name]);
  const plate = source.fields.get("plates").item;
  for (const [name, inner] of plate.fields) if (name !== "features") walk(inner, ["plate", name]);
  // The first creator of the file is a name alone, the second has fields.
  const there = (path) => ["0", "1"].some((index) => {
    const own = path.map((step) => (step === 0 ? index : step));
    const named = `[data-path="${own.join(".")}"], [id^="record-rest-${own.join("-")}"]`;
    return document.getElementById("record-form").querySelector(named);
  });
  return [found.length, found.filter((path) => !there(path)).map((path) => path.join("."))];
}"""


def test_every_field_of_the_schema_has_its_place_in_the_form(opened):
    page = opened("record.html")
    open_file(
        Typist(page), [{"name": "every-field.yaml", "mimeType": "text/yaml", "buffer": EVERY_FIELD.encode()}]
    )
    page.evaluate(
        "document.querySelectorAll('#record-form details').forEach((each) => (each.open = true)); 0"
    )
    until(page, "document.querySelectorAll('#record-rest-plate input').length > 8")
    number, absent = page.evaluate(FIELDS)
    assert number > 60
    assert absent == []
    page.fill("#record-rest-plate-locator-column", "c")
    page.locator("#record-rest-plate-treatment-reversed").check()
    page.get_by_role("button", name="Add to: creators").click()
    page.keyboard.type("C. Nobody")
    source = work(page)["source"]
    assert source["plates"][0]["locator"]["column"] == "c"
    assert source["plates"][0]["treatment"] == ["retouched", "tinted", "reversed"]
    assert source["creators"][2] == {"name": "C. Nobody"}


# ---- for everybody


@pytest.mark.parametrize(
    ("width", "dark"), [(1280, False), (1280, True), (640, False), (390, True), (320, False)]
)
def test_the_page_at_work_is_as_wide_as_the_window_and_axe_finds_nothing(opened, images, width, dark):
    """640 and 320 are a window of 1280 magnified to 200 % and 400 % (WCAG 2.2, 1.4.4 and 1.4.10)."""
    if not AXE.is_file():
        missing(f"{AXE} is absent: run npm ci in tests/")
    page = opened("record.html", width=width, dark=dark)
    hands = one_figure(page, images)
    hands.type("braid; a note that is rather long and goes on")
    hands.press("Enter")
    page.evaluate("InPeriod.recording.set(['source', 'plates', 0, 'features', 1, 'width'], 'wide'); 0")
    page.fill("#record-caption", "A caption as it is printed, long enough for two lines of the form. " * 2)
    page.evaluate(
        "document.querySelectorAll('#record-form details').forEach((each) => (each.open = true)); 0"
    )
    page.evaluate("InPeriod.recording.set(['source', 'date'], 'nonsense'); 0")
    until(page, "document.querySelectorAll('.record-problem').length >= 2")
    hands.press("Control+s")
    page.focus("#record-line")
    page.keyboard.type("c")
    until(page, "document.querySelectorAll('.record-term svg').length > 3")
    assert page.evaluate(TOO_WIDE) == []
    if width in (1280, 390):
        page.evaluate(AXE.read_text(encoding="utf-8"))
        ran = page.evaluate("axe.run(document, { resultTypes: ['violations'], preload: false })")
        assert [
            (each["id"], [node["html"][:140] for node in each["nodes"][:3]]) for each in ran["violations"]
        ] == []
