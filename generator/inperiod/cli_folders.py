"""The commands that write or show: build, serve, new, import."""

from __future__ import annotations

import argparse
import sys
import tempfile
from dataclasses import asdict
from pathlib import Path

from inperiod import cli_words as words
from inperiod.cli_reply import CannotDo, Reply, counted, find_folder, progress, read_folder


def build(arguments: argparse.Namespace) -> Reply:
    """``inperiod build``: refused where records hold errors, unless ``--anyway``."""
    from inperiod import publishing

    folder = find_folder(arguments.folder)
    progress("Reading the records …")
    reading = read_folder(arguments.folder)
    progress("")
    if reading.errors and not arguments.anyway:
        lines = [
            f"{(folder / each.file).as_posix()}:{each.line}:{each.column}: {each.message}"
            for each in reading.errors
        ]
        shown = "\n".join(lines[:10] + ([f"… and {len(lines) - 10} more"] if len(lines) > 10 else []))
        raise CannotDo(
            f"{counted(len(lines), 'error')} in the records, so the site was not built:\n{shown}\n"
            f"See: inperiod check {folder}\nTo publish what could be read all the same: --anyway",
            status=1,
        )
    try:
        report = publishing.build(
            reading.catalogue,
            Path(arguments.out),
            _pages,
            editions=reading.editions,
            grounds=reading.grounds,
        )
    except publishing.WillNotWrite as error:
        raise CannotDo(f"{error}.", status=1) from None
    except OSError as error:
        where = f" ({error.filename})" if error.filename else ""
        raise CannotDo(
            f"the site cannot be written to {arguments.out}: {error.strerror or error}{where}.\n"
            "What stood there before still stands.",
            status=1,
        ) from None
    finally:
        progress("")
    left = len(reading.errors)
    notes = (
        (f"Note: {counted(left, 'error')} in the records; what could not be read is not in the site.",)
        if left
        else ()
    )
    text = (
        f"{counted(report.pages, 'page')} for {counted(report.plates, 'plate')} "
        f"of {counted(report.sources, 'source')}. Open it in a browser:\n{report.first.resolve()}"
    )
    return Reply(words=text, notes=notes)


def _pages(done: int, total: int) -> None:
    if done % 20 == 0 or done == total:
        progress(f"Making part {done:,} of {total:,} …")


def serve(arguments: argparse.Namespace) -> Reply:
    """``inperiod serve``: the site is kept in a folder of its own, away from any built one."""
    from inperiod import publishing

    folder = find_folder(arguments.folder)
    with tempfile.TemporaryDirectory(prefix="inperiod-") as place:
        site = Path(place) / "site"

        def rebuild() -> None:
            try:
                reading = read_folder(arguments.folder)
                for each in reading.errors[:10]:
                    _say(f"{(folder / each.file).as_posix()}:{each.line}:{each.column}: {each.message}")
                report = publishing.build(
                    reading.catalogue,
                    site,
                    _pages,
                    editions=reading.editions,
                    grounds=reading.grounds,
                )
            except Exception as error:  # one slip in a template or a record must not end the serving
                progress("")
                _say(f"Not built, the last good site stays: {error}")
            else:
                progress("")
                _say(f"Built: {counted(report.pages, 'page')}, {counted(report.plates, 'plate')}.")

        rebuild()
        if not site.is_dir():
            raise CannotDo("there is no site to show.", status=1)
        publishing.serve(site, publishing.watched_folders(folder), rebuild, _say, arguments.port)
    return Reply()


def _say(text: str) -> None:
    sys.stderr.write(f"{text}\n")
    sys.stderr.flush()


def new(arguments: argparse.Namespace) -> Reply:
    """``inperiod new``."""
    from inperiod.importing import FolderInUse, new_folder

    path = Path(arguments.folder)
    try:
        files = new_folder(path)
    except FolderInUse as error:
        raise CannotDo(str(error)) from None
    except OSError as error:
        raise CannotDo(f"{path} cannot be made: {error.strerror}.", status=1) from None
    return Reply(
        words=f"Made {path} with {counted(len(files), 'file')}. Begin with {path / 'README.md'}\n"
        f"and {path / 'sources' / 'example-source.yaml'}; look at it with: inperiod serve {path}"
    )


def import_file(arguments: argparse.Namespace) -> Reply:
    """``inperiod import``: 1 where rows were not taken."""
    from inperiod.importing import CannotImport, import_table, is_manifest

    file, into = Path(arguments.file), Path(arguments.into)
    if is_manifest(file):
        return _import_manifest(file, into, arguments)
    if arguments.mapping is None:
        raise CannotDo("a table needs --mapping MAP.yaml, which says which column is which field.")
    try:
        report = import_table(file, Path(arguments.mapping), into, dry_run=arguments.dry_run)
    except CannotImport as error:
        raise CannotDo(str(error)) from None
    data = asdict(report)
    text = words.imported(report, into)
    if not report.dry_run:
        text += f"\nNow: inperiod check {into}"
    return Reply(words=text, data=data, status=1 if report.count("not taken") else 0)


def _import_manifest(file: Path, into: Path, arguments: argparse.Namespace) -> Reply:
    from inperiod.importing import CannotImport, import_manifest

    if arguments.mapping is not None:
        raise CannotDo("a IIIF manifest takes no --mapping.")
    try:
        report = import_manifest(file, into, dry_run=arguments.dry_run)
    except CannotImport as error:
        raise CannotDo(str(error)) from None
    except OSError as error:
        raise CannotDo(f"{into} cannot be written: {error.strerror}.", status=1) from None
    fates = {
        "new": "would be made" if report.dry_run else "was made",
        "changed": "would be made anew" if report.dry_run else "was made anew",
        "same": "stands as it was",
        "kept": "was edited by hand and is left alone",
    }
    lines = [
        f"{report.file} {fates[report.fate]}, with {counted(report.plates, 'plate')} to be filled in.",
        *(f"  To see to: {remark}" for remark in report.remarks),
    ]
    return Reply(words="\n".join(lines), data=asdict(report))


def tidy(arguments: argparse.Namespace) -> Reply:
    """``inperiod tidy``: 1 where a file cannot be read, or with ``--check`` where one is not tidy."""
    from inperiod.records import tidied_files, write_tidied

    folder = find_folder(arguments.folder)
    untidy, problems = tidied_files(folder)
    if not arguments.check:
        for each in untidy:
            try:
                write_tidied(folder, each)
            except OSError as error:
                raise CannotDo(
                    f"{folder / each.file} cannot be written: {error.strerror}.", status=1
                ) from None
    done = "not tidy" if arguments.check else "tidied"
    lines = [f"{(folder / each.file).as_posix()}: {done}" for each in untidy]
    lines += [
        f"{(folder / each.file).as_posix()}:{each.line}:{each.column}: {each.message}" for each in problems
    ]
    lines.append(
        f"{counted(len(untidy), 'file')} {done}." if untidy or not problems else "Nothing was changed."
    )
    return Reply(words="\n".join(lines), status=1 if problems or (untidy and arguments.check) else 0)
