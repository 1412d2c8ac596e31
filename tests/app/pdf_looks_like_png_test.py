"""A drawing looks the same as PDF and as PNG: signs are written as text in the one and as shapes in the other.

pdftoppm (poppler) draws the PDF; the reference is our own PNG at the same resolution. What the signs change in each is compared, as the two
programs draw the lines of cells a little differently.
"""
import struct
import subprocess
import sys
import tempfile
import zlib
from pathlib import Path

program, source = sys.argv[1], Path(sys.argv[2])
DOTS = 200


def png(path):
    """Width, height and bytes of an 8-bit RGB picture: ISO/IEC 15948, 9.2 for the filters."""
    data = path.read_bytes()
    at, packed = 8, b""
    while at < len(data):
        length, kind = struct.unpack(">I4s", data[at:at + 8])
        body = data[at + 8:at + 8 + length]
        if kind == b"IHDR":
            width, height, depth, colour = struct.unpack(">IIBB", body[:10])
            assert (depth, colour) == (8, 2), "not 8-bit RGB"
        if kind == b"IDAT":
            packed += body
        at += 12 + length
    raw, row_bytes = zlib.decompress(packed), 3 * width
    before, rows = bytearray(row_bytes), []
    for y in range(height):
        kind, row = raw[y * (row_bytes + 1)], bytearray(raw[y * (row_bytes + 1) + 1:(y + 1) * (row_bytes + 1)])
        for i in range(row_bytes):
            left, above, corner = (row[i - 3] if i >= 3 else 0), before[i], (before[i - 3] if i >= 3 else 0)
            if kind == 1:
                row[i] = row[i] + left & 255
            elif kind == 2:
                row[i] = row[i] + above & 255
            elif kind == 3:
                row[i] = row[i] + (left + above) // 2 & 255
            elif kind == 4:
                guess = left + above - corner
                nearest = min((abs(guess - left), 0, left), (abs(guess - above), 1, above), (abs(guess - corner), 2, corner))[2]
                row[i] = row[i] + nearest & 255
        rows.append(bytes(row))
        before = row
    return width, height, rows


def ink(with_signs, without):
    """What the signs change, byte by byte."""
    assert with_signs[:2] == without[:2]
    return [abs(x - y) for row, bare in zip(with_signs[2], without[2]) for x, y in zip(row, bare)]


def run(*arguments):
    subprocess.run([str(argument) for argument in arguments], check=True, capture_output=True)


with tempfile.TemporaryDirectory() as name:
    folder = Path(name)
    for number, (project, what) in enumerate([("moonwatch", "chart"), ("techniques/right-angle", "chart"), ("techniques/brick", "chart")]):
        drawn = {}
        for signs in ("letters", "none"):
            base = folder / f"{number}-{signs}"
            command = [program, "draw", source / "examples" / f"{project}.evencount.json", "--what", what, "--signs", signs]
            run(*command, "-o", f"{base}.pdf")
            run(*command, "--dpi", DOTS, "-o", f"{base}.png")
            run("pdftoppm", "-r", DOTS, "-png", "-singlefile", f"{base}.pdf", f"{base}-pdf")
            drawn[signs] = png(Path(f"{base}.png")), png(Path(f"{base}-pdf.png"))
        shape, text = (ink(drawn["letters"][i], drawn["none"][i]) for i in (0, 1))
        assert len(shape) == len(text), f"{project}: {len(shape)} bytes against {len(text)}"
        ratio = sum(text) / sum(shape)
        shared = sum(map(min, shape, text)) / sum(map(max, shape, text))
        print(f"{project}: signs have {ratio:.3f} of the ink that they have in the PNG, {shared:.2f} of it in the same place")
        assert abs(ratio - 1) < 0.15 and shared > 0.6, project
        read = subprocess.run(["pdftotext", folder / f"{number}-letters.pdf", "-"], check=True, capture_output=True, text=True).stdout
        assert not read.strip(), f"{project}: signs are read as {read.split()}"
