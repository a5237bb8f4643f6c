"""Looks at a printed hand-over sheet as a reader of PDF does: pages, pictures, letters, headings.

    python sheet.py PRINTED.PDF.BASE64

Prints what it found as JSON; the test that printed the sheet judges it. Needs what requirements.txt pins.
"""

import base64
import ctypes
import json
import sys

import pypdfium2
import pypdfium2.raw as pdfium


def font_of(text, index):
    """Name of a letter's font."""
    flags, name = ctypes.c_int(), ctypes.create_string_buffer(256)
    pdfium.FPDFText_GetFontInfo(text.raw, index, name, 256, flags)
    return name.value.decode(errors="replace")


def letters(page):
    """Letters with the box of their ink and that of their line: points from the lower left corner of the page."""
    text = page.get_textpage()
    for index in range(text.count_chars()):
        letter = chr(pdfium.FPDFText_GetUnicode(text.raw, index))
        if letter.isspace() or not letter.isprintable():
            continue
        yield letter, text.get_charbox(index), text.get_charbox(index, loose=True), font_of(text, index)


def lines(found):
    """Letters gathered by height, from the top: their text, the height of a letter's line where every one is bold, else 0."""
    rows = {}
    for letter, _, (left, bottom, _, top), font in found:
        near = next((height for height in rows if abs(height - bottom) < 2), bottom)
        rows.setdefault(near, []).append((left, letter, top - bottom if "bold" in font.lower() else 0))
    for height in sorted(rows, reverse=True):
        row = sorted(rows[height])
        yield "".join(letter for _, letter, _ in row), min(bold for _, _, bold in row)


def look(page):
    width, height = page.get_size()
    found = list(letters(page))
    boxes = [box for _, box, _, _ in found]
    kinds = [item.type for item in page.get_objects(max_depth=8)]
    return {
        "size": [width, height],
        "images": kinds.count(pdfium.FPDF_PAGEOBJ_IMAGE),
        "paths": kinds.count(pdfium.FPDF_PAGEOBJ_PATH),
        "letters": len(found),
        # How near the letters come to the edges of the paper.
        "margins": [
            min(left for left, *_ in boxes),
            min(bottom for _, bottom, *_ in boxes),
            width - max(right for *_, right, _ in boxes),
            height - max(top for *_, top in boxes),
        ],
        "lines": list(lines(found)),
    }


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    with open(sys.argv[1], "rb") as file:
        document = pypdfium2.PdfDocument(base64.b64decode(file.read()))
    print(json.dumps([look(page) for page in document]))


if __name__ == "__main__":
    main()
