"""The command ``inperiod``: arguments in, sentences or JSON out. The only place that prints.

Exit status: 0 where all is well, 1 where records hold errors or an answer could not be given, 2 where
the command was not understood or names something that is not there.
"""

from __future__ import annotations

import argparse
import json
import os
import re
import sys
from collections.abc import Callable, Sequence
from typing import Any, NoReturn

from inperiod import __version__
from inperiod import cli_add as record
from inperiod import cli_answers as answers
from inperiod import cli_boards as boards
from inperiod import cli_folders as folders
from inperiod.cli_reply import CannotDo, Reply

DESCRIPTION = """\
A dated-source reference catalogue of dress: is this feature right for that year, and which dated
plate says so?

  inperiod fit --garment day-dress --feature neckline/square --when 1926
"""
EPILOGUE = """\
FOLDER is a folder with inperiod.yaml in it; without one, the current folder or ./catalogue is taken.
Exit status: 0 all is well; 1 the records hold errors, or an answer could not be given; 2 the command
was not understood, or names something that is not there. Each command explains itself: inperiod fit --help
"""


_HALF = re.compile("[\ud800-\udfff]")


class _Parser(argparse.ArgumentParser):
    """An argument parser whose complaints say where help is."""

    def error(self, message: str) -> NoReturn:
        self.exit(2, f"inperiod: {message}\nSee: {self.prog} --help\n")


class _Command(_Parser):
    """The parser of one command, in which names and options may stand in any order, a folder last."""

    _sorting = False

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        # The standard library sorts options from names only where asked to, and asks back here in doing so.
        if self._sorting:
            return super().parse_known_args(args, namespace)
        self._sorting = True
        try:
            return self.parse_known_intermixed_args(args, namespace)
        finally:
            self._sorting = False


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; the exit status."""
    try:
        arguments = make_parser().parse_args(argv)
        reply: Reply = arguments.run(arguments)
        _print(reply, as_json=arguments.json)
        sys.stdout.flush()
        return reply.status
    except CannotDo as error:
        print(f"inperiod: {error}", file=sys.stderr)
        return error.status
    except BrokenPipeError:
        # The reader of our output has gone (``| head``): not an error, but nothing more can be written.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print("\ninperiod: stopped.", file=sys.stderr)
        return 130


def _print(reply: Reply, *, as_json: bool) -> None:
    for note in reply.notes:
        print(note, file=sys.stderr)
    if reply.documents is not None:
        for document in reply.documents:
            print(_json(document, indent=None), flush=True)
    elif as_json:
        print(_json(reply.data, indent=2))
    elif reply.words:
        _print_words(reply.words)


def _print_words(words: str) -> None:
    """Sentences, with a question mark for letters that the terminal's encoding lacks."""
    encoding = sys.stdout.encoding or "utf-8"
    print(words.encode(encoding, errors="replace").decode(encoding))


def _json(value: Any, indent: int | None) -> str:
    """JSON with every letter legible where the output can hold it; half a character, as an argument may bring
    one along, only escaped."""
    legible = (sys.stdout.encoding or "").lower().replace("-", "") == "utf8"
    text = json.dumps(value, ensure_ascii=not legible, allow_nan=False, indent=indent)
    if legible and _HALF.search(text):
        return json.dumps(value, ensure_ascii=True, allow_nan=False, indent=indent)
    return text


def make_parser() -> argparse.ArgumentParser:
    """Every command with its help."""
    parser = _Parser(
        prog="inperiod",
        description=DESCRIPTION,
        epilog=EPILOGUE,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"inperiod {__version__}")
    commands = parser.add_subparsers(
        title="commands", metavar="COMMAND", required=True, parser_class=_Command
    )
    for add in (_when, _fit, _timeline, _check, _cite, _board, _build, _serve, _new, _import, _add, _tidy):
        add(commands)
    return parser


def _command(
    commands: Any, name: str, run: Callable[[argparse.Namespace], Reply], says: str, more: str, examples: str
) -> argparse.ArgumentParser:
    """One command; ``examples`` are shown under its help."""
    parser: argparse.ArgumentParser = commands.add_parser(
        name,
        help=says,
        description=f"{says[0].upper()}{says[1:]}. {more}".strip(),
        epilog=f"examples:\n{examples}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.set_defaults(run=run, json=False)
    return parser


def _can_json(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="print one JSON document instead of sentences")


def _takes_folder(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder", nargs="?", metavar="FOLDER", help="the catalogue (default: this folder, or ./catalogue)"
    )


def _when(commands: Any) -> None:
    parser = _command(
        commands,
        "when",
        answers.when,
        "read a date phrase and say what was understood",
        "Phrases as people and museums write them, or EDTF.",
        '  inperiod when "ca. 1885–90"\n'
        '  inperiod when "Autumn and Winter 1912-13" --json\n'
        "  inperiod when --lines phrases.txt       one phrase per line in, one JSON document per line out\n",
    )
    parser.add_argument("phrase", nargs="?", metavar="PHRASE")
    parser.add_argument(
        "--lines", metavar="FILE", help="read phrases from FILE, one a line; - is standard input"
    )
    parser.add_argument(
        "--circa-years",
        type=int,
        default=None,
        metavar="N",
        help="how far circa reaches, in years (default 5)",
    )
    parser.add_argument(
        "--seasons",
        choices=("northern", "southern"),
        default="northern",
        help="in which half of the world autumn is (default northern)",
    )
    _can_json(parser)


def _asks_evidence(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--garment", required=True, metavar="G", help="a garment type, by id or name: day-dress"
    )
    parser.add_argument("--place", metavar="P", help="only sources published or sold there")
    parser.add_argument(
        "--wearer",
        metavar="W",
        choices=("woman", "man", "girl", "boy", "infant"),
        help="woman, man, girl, boy or infant",
    )
    parser.add_argument("--kind", metavar="K", help="only one kind of source: trade-catalogue, photograph, …")
    parser.add_argument(
        "--grades",
        metavar="A|AB|ABC",
        choices=("A", "AB", "ABC"),
        help="how well dated a source must be to count: A printed, internal or documented; B also dated by "
        "an institution; C also by seller, style or estimate (default: the catalogue's setting, else A)",
    )


def _fit(commands: Any) -> None:
    parser = _command(
        commands,
        "fit",
        answers.fit,
        "ask whether features are right for a time, and which plates say so",
        "Give --feature more than once to ask about several together.",
        "  inperiod fit --garment day-dress --feature neckline/square --when 1926\n"
        '  inperiod fit --garment dress --feature "boat neck" --feature sleeveless --when "late 1920s"\n'
        "  inperiod fit --garment textile --feature fabric/velvet --when 17XX --grades AB --json museum/\n",
    )
    _asks_evidence(parser)
    parser.add_argument(
        "--feature",
        required=True,
        action="append",
        metavar="F",
        help="a term as facet/id (neckline/square), or any of its names",
    )
    parser.add_argument(
        "--when", required=True, metavar="DATE", help="EDTF or a phrase: 1926, 192X, 1924/1927"
    )
    parser.add_argument(
        "--worn-for",
        type=float,
        default=0.0,
        metavar="YEARS",
        help="count garments that long after their date, as old ones still worn (default 0)",
    )
    parser.add_argument(
        "--cite", metavar="STYLE", help="cite every plate the answer lists, in that style, e.g. mla"
    )
    _can_json(parser)
    _takes_folder(parser)


def _timeline(commands: Any) -> None:
    parser = _command(
        commands,
        "timeline",
        answers.timeline,
        "count the terms of a facet by decade",
        "",
        "  inperiod timeline --garment day-dress --facet neckline\n"
        "  inperiod timeline --garment blouse --facet sleeve --place London --json\n",
    )
    _asks_evidence(parser)
    parser.add_argument("--facet", required=True, metavar="F", help="a facet, by id or name: neckline")
    _can_json(parser)
    _takes_folder(parser)


def _check(commands: Any) -> None:
    parser = _command(
        commands,
        "check",
        answers.check,
        "read every record and name everything that is wrong",
        "Exit status 1 where a problem is an error; warnings alone are 0.",
        "  inperiod check\n"
        "  inperiod check my-research --json\n"
        "  inperiod check --changed main           what this branch touches, and what hangs on it\n",
    )
    parser.add_argument(
        "--changed",
        metavar="REV",
        help="name only what concerns records changed since that git revision: the changed ones, and those "
        "that refer to them or use a term that changed",
    )
    _can_json(parser)
    _takes_folder(parser)


def _cite(commands: Any) -> None:
    parser = _command(
        commands,
        "cite",
        answers.cite,
        "cite dated plates",
        "A plate is named source-id/plate-id, as the other commands print it; a source by its id alone.",
        "  inperiod cite lake-1926-summer/p12-3\n"
        "  inperiod cite lake-1926-summer/p12-3 lake-1926-summer/p14-1 --format biblatex\n"
        "  inperiod cite --board womans-regatta-frock-1926 --style mla catalogue\n",
    )
    parser.add_argument(
        "plates", metavar="PLATE", nargs="*", help="source-id/plate-id or source-id; a folder may come last"
    )
    parser.add_argument("--board", metavar="ID", help="every plate gathered on a board")
    parser.add_argument(
        "--style", metavar="S", help="a citation style (default: chicago-note; a wrong one lists all)"
    )
    parser.add_argument(
        "--format",
        default="text",
        choices=("text", "html", "csl-json", "bibtex", "biblatex", "ris"),
        help="text (the default) or html in a style; csl-json, bibtex, biblatex or ris for other programs",
    )


def _board(commands: Any) -> None:
    parser = _command(
        commands,
        "board",
        boards.board,
        "show one research board worked out, and check it",
        "What is planned with its verdicts, what is still to settle, the making sheet, what to cite. Exit "
        "status 1 where the file, its making sheet or the plan itself is in error.",
        "  inperiod board catalogue/boards/womans-regatta-frock-1926.yaml\n"
        "  inperiod board from-the-browser.yaml my-research --json\n",
    )
    parser.add_argument("file", metavar="FILE", help="a board file, or the id of a board of the catalogue")
    _can_json(parser)
    _takes_folder(parser)


def _build(commands: Any) -> None:
    parser = _command(
        commands,
        "build",
        folders.build,
        "make the static site",
        "The folder it is written to is replaced whole, and only once everything could be made.",
        "  inperiod build\n  inperiod build my-research --out my-site\n",
    )
    parser.add_argument(
        "--out", metavar="DIR", default="public", help="where to write it (default: public, here)"
    )
    parser.add_argument("--anyway", action="store_true", help="build although records hold errors")
    _takes_folder(parser)


def _serve(commands: Any) -> None:
    parser = _command(
        commands,
        "serve",
        folders.serve,
        "build, show on this machine only, and build again on every change",
        "Stop it with Ctrl-C.",
        "  inperiod serve\n  inperiod serve my-research --port 8100\n",
    )
    parser.add_argument("--port", type=int, default=8000, metavar="N", help="default: 8000")
    _takes_folder(parser)


def _new(commands: Any) -> None:
    parser = _command(
        commands,
        "new",
        folders.new,
        "make a research folder to start from",
        "It holds settings, the vocabulary, one example source with comments, and a README.",
        "  inperiod new my-research\n",
    )
    parser.add_argument("folder", metavar="FOLDER", help="a folder that is not there yet, or an empty one")


def _import(commands: Any) -> None:
    parser = _command(
        commands,
        "import",
        folders.import_file,
        "turn a spreadsheet, saved as CSV, or a IIIF manifest into source files",
        "A mapping says which column of a table is which field. A manifest (Presentation API 2 or 3, saved "
        "as a file) makes one source with a plate to be filled in for each canvas. Running it twice changes "
        "nothing, and a source file edited by hand is never overwritten.",
        "  inperiod import objects.csv --mapping objects-mapping.yaml --into my-research --dry-run\n"
        "  inperiod import objects.csv --mapping objects-mapping.yaml --into my-research\n"
        "  inperiod import manifest.json --into my-research\n",
    )
    parser.add_argument("file", metavar="FILE", help="a table (.csv) or a IIIF manifest (.json)")
    parser.add_argument("--mapping", metavar="MAP.yaml", help="which column of a table is which field")
    parser.add_argument(
        "--into", required=True, metavar="FOLDER", help="the catalogue that receives the sources"
    )
    parser.add_argument(
        "--dry-run", action="store_true", help="write nothing; say row by row what would be made"
    )
    _can_json(parser)


def _add(commands: Any) -> None:
    parser = _command(
        commands,
        "add",
        record.add,
        "record plates, one question at a time",
        "Asks for the source, new or there already, then for plate after plate; each is written as soon as "
        "it is finished. Names are completed with the tab key. A feature is one line: a name, and beside it "
        "where it sits, its width, how it was read, and after a semicolon a note.",
        "  inperiod add my-research\n\n"
        "features:\n"
        "  square neck\n  insertion @hem 1 in\n  lawn read\n  back opening inferred; hooks are mentioned\n"
        "  no collar\n  sleeve ?          (it cannot be seen)\n",
    )
    _takes_folder(parser)


def _tidy(commands: Any) -> None:
    parser = _command(
        commands,
        "tidy",
        folders.tidy,
        "lay out the records alike, without changing what they say",
        "Order, comments and wording stay. A file that cannot be read, or would come to mean something else, "
        "is left alone.",
        "  inperiod tidy\n  inperiod tidy my-research --check      name the files, change nothing\n",
    )
    parser.add_argument(
        "--check", action="store_true", help="change nothing; exit status 1 where a file is not tidy"
    )
    _takes_folder(parser)
