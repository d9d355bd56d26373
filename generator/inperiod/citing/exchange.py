"""Citations as other programs read them: CSL-JSON, BibTeX, BibLaTeX and RIS.

Each format is a plain function from entries to text. The EDTF date travels whole wherever the format has
a place for it: in CSL-JSON's ``custom``, BibLaTeX's ``date`` (which is EDTF), the last part of RIS's ``DA``;
BibTeX has none but ``note``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from json.encoder import encode_basestring

from inperiod.citing.csl import Entry, entry_for
from inperiod.citing.pieces import MONTHS, Item, figure_of, locator_of
from inperiod.records.model import Catalogue


def csl_json(entries: Iterable[Entry]) -> str:
    """A CSL-JSON array (csl-data 1.0.2)."""
    return indented([_csl_entry(entry) for entry in entries]) + "\n"


def indented(value: object, margin: str = "\n") -> str:
    """Texts, whole numbers and truths, in lists and dicts of text keys, as JSON indented by twos.
    ``json.dumps(value, ensure_ascii=False, indent=2)`` says the same, but only its plain form is quick."""
    inner = margin + "  "
    match value:
        case str():
            return encode_basestring(value)
        case bool():
            return "true" if value else "false"
        case int():
            return repr(value)
        case {}:
            pairs = [f"{encode_basestring(key)}: {indented(each, inner)}" for key, each in value.items()]
            return "{" + inner + f",{inner}".join(pairs) + margin + "}" if pairs else "{}"
        case [*members]:
            return (
                "[" + inner + f",{inner}".join([indented(each, inner) for each in members]) + margin + "]"
                if members
                else "[]"
            )
    raise TypeError(f"no CSL value: {value!r}")


def _csl_entry(entry: Entry) -> Item:
    custom = {"edtf": entry.edtf, "locator": locator_of(entry.locator, page_label=True)}
    kept = {key: value for key, value in (entry.item.get("custom", {}) | custom).items() if value}
    item = entry.item | ({"page": entry.page} if entry.page else {})
    return item | ({"custom": kept} if kept else {})


# --- BibTeX and BibLaTeX ----------------------------------------------------------------------------

_BIB_TYPES = {
    "book": "book",
    "pamphlet": "booklet",
    "article-magazine": "article",
    "article-newspaper": "article",
    "webpage": "misc",
    "graphic": "misc",
    "document": "misc",
}

# Characters that LaTeX takes for commands. Braces must stay balanced even when escaped, hence the words.
_LATEX = str.maketrans(
    {
        "\\": r"\textbackslash{}",
        "{": r"\textbraceleft{}",
        "}": r"\textbraceright{}",
        "&": r"\&",
        "%": r"\%",
        "#": r"\#",
        "_": r"\_",
        "$": r"\$",
        "~": r"\textasciitilde{}",
        "^": r"\textasciicircum{}",
    }
)


def bibtex(entries: Iterable[Entry]) -> str:
    """Classic BibTeX: year and month, the EDTF date in the note where those cannot hold it."""
    return "\n".join(_bib_entry(entry, _bibtex_fields(entry)) for entry in entries)


def biblatex(entries: Iterable[Entry]) -> str:
    """BibLaTeX, whose ``date`` is EDTF."""
    return "\n".join(_bib_entry(entry, _biblatex_fields(entry)) for entry in entries)


def _bib_entry(entry: Entry, own: Mapping[str, str]) -> str:
    item = entry.item
    fields = {
        "title": item.get("title", item.get("container-title", "")),
        "author": _bib_names(item.get("author", ())),
        "editor": _bib_names(item.get("editor", ())),
        "edition": item.get("edition", ""),
        "volume": item.get("volume", ""),
        "number": item.get("issue", ""),
        "publisher": item.get("publisher", ""),
        "pages": entry.page.replace("–", "--"),
        "type": item.get("genre", ""),
        "library": ", ".join(item[key] for key in ("archive", "archive_location") if item.get(key)),
        **own,
    }
    written = {
        key: value if key in ("author", "editor") else _latex(value) for key, value in fields.items() if value
    }
    if item.get("URL"):
        written["url"] = item["URL"].replace("{", "%7B").replace("}", "%7D")
    lines = "".join(f"  {key} = {{{value}}},\n" for key, value in written.items())
    return f"@{_BIB_TYPES[item['type']]}{{{item['id'].replace('/', ':')},\n{lines}}}\n"


def _bibtex_fields(entry: Entry) -> dict[str, str]:
    item, issued = entry.item, entry.item.get("issued", {})
    parts = issued.get("date-parts", [[]])
    whole = "-".join(f"{part:02d}" for part in parts[0]) if len(parts) == 1 else ""
    held = f"EDTF date {entry.edtf}" if entry.edtf and entry.edtf != whole else ""
    return {
        "journal": item.get("container-title", "") if item["type"].startswith("article") else "",
        "address": item.get("publisher-place", ""),
        "year": issued.get("literal", "") or (str(parts[0][0]) if parts[0] else ""),
        "month": MONTHS[parts[0][1] - 1] if len(parts[0]) > 1 else "",
        "note": ", ".join(part for part in (figure_of(entry.locator), held) if part),
    }


def _biblatex_fields(entry: Entry) -> dict[str, str]:
    item = entry.item
    return {
        "journaltitle": item.get("container-title", "") if item["type"].startswith("article") else "",
        "location": item.get("publisher-place", ""),
        "date": entry.edtf,
        "urldate": "-".join(f"{part:02d}" for part in item.get("accessed", {}).get("date-parts", [[]])[0]),
        "langid": item.get("language", ""),
        "addendum": figure_of(entry.locator),
    }


def _bib_names(names: Iterable[Item]) -> str:
    """A firm is braced whole, so that it is never cut into given and family name."""
    return " and ".join(
        f"{{{_latex(name['literal'])}}}"
        if "literal" in name
        else f"{_latex(name['family'])}, {_latex(name['given'])}"
        for name in names
    )


def _latex(text: str) -> str:
    return " ".join(str(text).split()).translate(_LATEX)


# --- RIS ----------------------------------------------------------------------------------------------

_RIS_TYPES = {
    "book": "BOOK",
    "pamphlet": "PAMP",
    "article-magazine": "MGZN",
    "article-newspaper": "NEWS",
    "webpage": "ELEC",
    "graphic": "ART",
    "document": "GEN",
}


def ris(entries: Iterable[Entry]) -> str:
    """RIS, one record an entry; ``DA`` is year/month/day/other with the EDTF date as its other part."""
    return "\n".join(_ris_entry(entry) for entry in entries)


def _ris_entry(entry: Entry) -> str:
    item = entry.item
    first, _, last = entry.page.replace("–", "-").partition("-")
    lines = [
        ("TY", _RIS_TYPES[item["type"]]),
        ("ID", item["id"]),
        *(("AU", _ris_name(name)) for name in item.get("author", ())),
        *(("ED", _ris_name(name)) for name in item.get("editor", ())),
        ("TI", item.get("title", item.get("container-title"))),
        ("T2", item.get("container-title") if item.get("title") else None),
        ("PY", _ris_year(item)),
        ("DA", _ris_date(entry)),
        ("VL", item.get("volume")),
        ("IS", item.get("issue")),
        ("ET", item.get("edition")),
        ("SP", first),
        ("EP", last),
        ("PB", item.get("publisher")),
        ("CY", item.get("publisher-place")),
        ("M3", item.get("genre")),
        ("N1", figure_of(entry.locator)),
        ("DB", item.get("archive")),
        ("AN", item.get("archive_location")),
        ("LA", item.get("language")),
        ("UR", item.get("URL")),
        ("Y2", "/".join(f"{part:02d}" for part in item.get("accessed", {}).get("date-parts", [[]])[0])),
    ]
    text = "".join(f"{tag}  - {' '.join(str(value).split())}\n" for tag, value in lines if value)
    return text + "ER  - \n"


def _ris_name(name: Item) -> str:
    return str(name.get("literal") or f"{name['family']}, {name['given']}")


def _ris_year(item: Item) -> str:
    parts = item.get("issued", {}).get("date-parts", [[]])[0]
    return str(parts[0]) if parts else ""


def _ris_date(entry: Entry) -> str:
    if not entry.edtf:
        return ""
    dates = entry.item.get("issued", {}).get("date-parts", [])
    parts = [f"{part:02d}" for part in dates[0]] if len(dates) == 1 else []
    return "/".join([*[*parts, "", "", ""][:3], entry.edtf])


FORMATS: Mapping[str, Callable[[Iterable[Entry]], str]] = {
    "csl-json": csl_json,
    "bibtex": bibtex,
    "biblatex": biblatex,
    "ris": ris,
}

# The formats offered as files, with their endings.
DOWNLOADS: Mapping[str, str] = {"csl-json": "csl.json", "biblatex": "bib", "ris": "ris"}


def downloads(entry: Entry) -> dict[str, str]:
    """A plate or source in each of the formats of ``DOWNLOADS``."""
    return {fmt: FORMATS[fmt]([entry]) for fmt in DOWNLOADS}


def joined(texts: Sequence[str], fmt: str) -> str:
    """Several entries in a format, from what ``downloads`` gives of each by itself."""
    if fmt != "csl-json":
        return "\n".join(texts)
    return "[\n  " + ",\n  ".join(map(item_alone, texts)) + "\n]\n" if texts else "[]\n"


def item_alone(csl_list: str) -> str:
    """The text of the item of a CSL-JSON list of one."""
    return csl_list.strip().removeprefix("[").removesuffix("]").strip()


def export(catalogue: Catalogue, keys: Iterable[str], fmt: str) -> str:
    """Plates and sources in an exchange format: ``csl-json``, ``bibtex``, ``biblatex`` or ``ris``.

    Raises KeyError for an unknown key or format.
    """
    return FORMATS[fmt]([entry_for(catalogue, key) for key in keys])
