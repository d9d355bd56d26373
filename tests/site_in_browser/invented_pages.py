"""Six pages of an invented catalogue as pictures, twenty figures on them: something to record from."""

from __future__ import annotations

from pathlib import Path

from PIL import Image, ImageDraw

PAPER, INK, CLOTH = (238, 230, 212), (34, 28, 28), (205, 198, 184)
FIGURES = (4, 4, 4, 4, 2, 2)
"""How many figures each page has, in two columns."""


def make_pages(folder: Path, width: int = 900, height: int = 1250) -> list[Path]:
    """``p011.png`` to ``p016.png`` in the folder, in order."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for number, figures in enumerate(FIGURES):
        page = Image.new("RGB", (width, height), PAPER)
        pen = ImageDraw.Draw(page)
        pen.text((width // 2 - 90, 30), "INVENTED LIST OF WASHING FROCKS", fill=INK)
        for each in range(figures):
            x, y = 90 + each % 2 * 390, 110 + each // 2 * 560
            _frock(pen, x, y)
            pen.text((x + 60, y + 460), f"No. {2200 + 10 * number + each}. Frock in lawn.", fill=INK)
        file = folder / f"p{11 + number:03}.png"
        page.save(file)
        made.append(file)
    return made


def _frock(pen: ImageDraw.ImageDraw, x: int, y: int) -> None:
    outline = [(120, 0), (200, 0), (230, 180), (320, 440), (0, 440), (90, 180)]
    pen.polygon([(x + right, y + down) for right, down in outline], fill=CLOTH, outline=INK, width=5)
    for fold in range(6):
        pen.line([(x + 60 + fold * 35, y + 250), (x + 40 + fold * 45, y + 430)], fill=INK, width=2)
