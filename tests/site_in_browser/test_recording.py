"""The page on which a source is recorded, driven in Chromium by keys alone; what it saves is judged by the
checker itself, and files that are there already go through it unchanged."""

from __future__ import annotations

import io
import shutil
import time
import zipfile
from pathlib import Path

import pytest

from inperiod.publishing import build
from inperiod.records import read_catalogue
from inperiod.records.shapes import shape_of
from inperiod.records.tidying import tidy
from inperiod.records.yaml_reading import plain_value, read_yaml
from site_in_browser.invented_pages import FIGURES
from site_in_browser.recording import (
    EVERY_FIELD,
    Typist,
    begin,
    checked,
    choose,
    focused,
    one_figure,
    open_file,
    save_by_keys,
    state_the_source,
    until,
    work,
)

pytestmark = pytest.mark.browser

MOST_KEYS = 45
"""Keys a figure, captions aside: the aim that was set."""


WHOLE = [
    ["sq n", "no col", "clo?", "elb", "nat w", "lawn r", "whi", "ins @yoke 1 in"],
    ["v n", "shaw", "back c", "short s", "low w", "voi r", "nav", "pin t @bod"],
    ["rou n", "pet", "front c", "three", "rais", "zep r", "check", "pip @col"],
]
"""What the first figure of a page shows, in full."""
CHANGES = [["v n", "back c", "nav"], ["rou n", "short s", "pip @col"], ["sq n", "three", "check"]]
"""What the next ones show otherwise than the figure before."""


def record(hands, number, first_on_page):
    """One figure, from the line of features of the figure before to the same line."""
    page = hands.page
    plates = len(work(page)["source"].get("plates", []))
    if first_on_page and number:
        hands.press("PageDown")
    # From the line of features an empty Enter goes on; from elsewhere Control and Enter.
    hands.press("Enter" if focused(page) == "record-line" else "Control+Enter")
    until(page, f"(InPeriod.recording.get().source.plates || []).length === {plates + 1}")
    hands.type(str(2200 + number))
    hands.press("Tab")
    hands.type(f"{number % 12 + 1}/11")
    hands.press("Tab")
    before = hands.keys
    hands.paste(f"A charming frock, number {2200 + number}, in lawn with insertion.")
    hands.keys = before  # captions aside
    hands.press("Tab")
    if number == 0:
        hands.type("day d")
        hands.press("Enter")
    hands.press("Tab")
    assert focused(page) == "record-line"
    if not first_on_page:
        hands.press("=")
    for line in WHOLE[number % 3] if first_on_page else CHANGES[number % 3]:
        hands.type(line)
        hands.press("Enter")


def test_twenty_figures_by_keys_alone(opened, images, demo_folder, tmp_path, capsys):
    page = opened("record.html")
    hands = begin(page, images)
    assert focused(page) == "record-source-title"
    state_the_source(hands)
    assert "Autumn 1912: 1912-23" in page.inner_text("#record-reading")
    before, started, number = hands.keys, time.monotonic(), 0
    for figures in FIGURES:
        for each in range(figures):
            record(hands, number, each == 0)
            number += 1
    took = time.monotonic() - started
    each = (hands.keys - before) / number
    with capsys.disabled():
        print(f"\n{number} figures, {each:.1f} keys a figure, captions aside; driven in {took:.1f} s")
    assert number == 20
    assert each <= MOST_KEYS
    source = work(page)["source"]
    assert [plate["id"] for plate in source["plates"]][:5] == ["p11-1", "p11-2", "p11-3", "p11-4", "p12-1"]
    assert min(len(plate["features"]) for plate in source["plates"]) >= 8
    assert len({(plate["image"]["file"], plate["image"]["region"]) for plate in source["plates"]}) == 20
    until(page, "document.getElementById('record-wrong').hidden")
    archive = save_by_keys(hands)
    folder = catalogue_with(archive, tmp_path, demo_folder)
    assert checked(folder, capsys) == []
    file = folder / "sources/invented-list-of-washing-frocks-1912.yaml"
    assert tidy(file.read_bytes()) == file.read_bytes()
    site = build(read_catalogue(folder).catalogue, tmp_path / "public")
    assert (site.sources, site.plates) == (1, 20)
    # Opened again from its own file, saved again: not a byte is other.
    again = opened("record.html")
    hands = Typist(again)
    open_file(hands, [{"name": "list.zip", "mimeType": "application/zip", "buffer": archive}])
    assert len(work(again)["source"]["plates"]) == 20
    assert contents(save_by_keys(hands)) == contents(archive)


def contents(archive):
    with zipfile.ZipFile(io.BytesIO(archive)) as inside:
        assert inside.testzip() is None
        return {name: inside.read(name) for name in inside.namelist()}


def catalogue_with(archive, tmp_path, demo_folder):
    """A catalogue's folder with the demonstration's vocabulary and what was saved, unpacked."""
    folder = tmp_path / "catalogue"
    folder.mkdir()
    shutil.copytree(demo_folder / "vocabulary", folder / "vocabulary")
    (folder / "inperiod.yaml").write_text("title: Tried\n", encoding="utf-8")
    for name, data in contents(archive).items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
    return folder


def missing_fields(shape, value, path=""):
    """Fields of the schema that stand nowhere in the value."""
    if shape.kind == "fields":
        for name, inner in shape.fields.items():
            held = [each[name] for each in value if isinstance(each, dict) and name in each]
            if held:
                yield from missing_fields(inner, held, f"{path}.{name}")
            else:
                yield f"{path}.{name}"
    elif shape.kind == "list":
        yield from missing_fields(shape.item, [entry for each in value for entry in each], path)
    elif shape.kind == "either":
        yield from missing_fields(shape.table, value, path)


def test_a_file_with_every_field_opens_and_saves_as_it_was(opened, demo_folder):
    known = plain_value(read_yaml(EVERY_FIELD.encode(), "").root)
    # `instead` of a confirmation: see the test of reviews.
    assert [
        each for each in missing_fields(shape_of("source"), [known]) if not each.endswith(".instead")
    ] == []
    page = opened("record.html")
    hands = Typist(page)
    files = {"every-field.yaml": EVERY_FIELD}
    for name in ("harrowmere-washing-frocks-1912", "album-page-lake-hotel-1929", "navette-mondaine-1925-07"):
        files[f"{name}.yaml"] = (demo_folder / f"sources/{name}.yaml").read_text(encoding="utf-8")
    for name, text in files.items():
        open_file(hands, [{"name": name, "mimeType": "text/yaml", "buffer": text.encode()}])
        assert page.evaluate("InPeriod.recordSave.textOf(InPeriod.recording.get())") == text
        if not page.inner_text("#record-wrong").count("Wrong"):
            assert save_by_keys(hands).decode() == text
        page.click("#record-leave")
        page.wait_for_selector("#record-start:not([hidden])")


def test_a_change_leaves_the_rest_of_a_file_alone(opened):
    page = opened("record.html")
    hands = Typist(page)
    open_file(hands, [{"name": "every-field.yaml", "mimeType": "text/yaml", "buffer": EVERY_FIELD.encode()}])
    hands.press("F4")
    hands.type("back c")
    hands.press("Enter")
    hands.press("F9")
    page.fill("#record-source-title", "Every Field, again")
    text = page.evaluate("InPeriod.recordSave.textOf(InPeriod.recording.get())")
    was, now = EVERY_FIELD.splitlines(), text.splitlines()
    changed = [line for line in now if line not in was]
    assert changed == ["title: Every Field, again", "      - closure/back"]
    assert [line for line in was if line not in now] == ['title: "Every Field, a Quarterly"']
    assert tidy(text.encode()).decode() == text


@pytest.mark.parametrize(
    ("bad", "says"),
    [
        (b"title: [a\n", "line 1"),
        (b"\xff\xfe\x00", "UTF-8"),
        (b"- a\n- b\n", "holds no source"),
        (b"title: a\nplates: all of them\n", "not a list"),
    ],
)
def test_a_file_that_cannot_be_opened_is_left_as_it_is(opened, bad, says):
    page = opened("record.html")
    choose(Typist(page), "record-open-file", [{"name": "bad.yaml", "mimeType": "text/yaml", "buffer": bad}])
    page.wait_for_selector("#record-notice:not([hidden])")
    words = page.inner_text("#record-notice")
    assert "left as it is" in words
    assert says.lower() in words.lower()
    assert page.is_hidden("#record-work")


def test_saving_into_a_folder_writes_the_file_and_its_pictures(opened, served, images):
    """The folder is one of the browser's own (File System standard), as the dialog cannot be driven."""
    page = opened("record.html", at=served)
    page.evaluate("window.showDirectoryPicker = () => navigator.storage.getDirectory(); 0")
    hands = one_figure(page, images)
    hands.press("Control+s")
    page.get_by_role("button", name="Into the catalogue’s folder").click()
    until(page, "document.getElementById('record-saved').textContent.startsWith('Saved: sources/')")
    read = """async (path) => {
      let at = await navigator.storage.getDirectory();
      const steps = path.split("/"), last = steps.pop();
      for (const step of steps) at = await at.getDirectoryHandle(step);
      const file = await (await at.getFileHandle(last)).getFile();
      return [file.size, await file.text()];
    }"""
    name = "invented-list-of-washing-frocks-1912"
    text = page.evaluate(read, f"sources/{name}.yaml")[1]
    assert "neckline/square" in text
    assert page.evaluate(read, f"images/{name}/p011.png")[0] == Path(images[0]).stat().st_size
    # Another's file of that name is not written over unasked.
    page.evaluate(
        """async (name) => {
          const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle("sources");
          const stream = await (await folder.getFileHandle(name)).createWritable();
          await stream.write("title: another's\\n");
          await stream.close();
        }""",
        f"{name}.yaml",
    )
    hands.press("F4")
    hands.type("back c")
    hands.press("Enter", "Control+s")
    page.get_by_role("button", name="Write over it").wait_for()
    assert page.evaluate(read, f"sources/{name}.yaml")[1] == "title: another's\n"
    page.get_by_role("button", name="Write over it").click()
    until(page, "document.getElementById('record-notice').hidden")
    until(page, "document.getElementById('record-saved').textContent.startsWith('Saved: sources/')")
    assert "closure/back" in page.evaluate(read, f"sources/{name}.yaml")[1]
