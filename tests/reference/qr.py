"""Links as pictures, read by another program: zxing-cpp reads what `dicrotic link --qr` draws, turned and noisy too, and
Python's zlib unpacks what the link holds."""

import base64
import pathlib
import re
import tempfile
import zlib

import numpy as np
import zxingcpp

from reference import Checks, dicrotic

checks = Checks("qr")


def raster(svg, scale):
    """The picture's modules as grey pixels: white all over, then the runs that the path draws in black."""
    side = int(re.search(r'viewBox="0 0 (\d+) (\d+)"', svg).group(1))
    pixels = np.full((side, side), 255, dtype=np.uint8)
    for x, y, run in re.findall(r"M(\d+) (\d+)h(\d+)v1", svg.split('fill="#000"')[1]):
        pixels[int(y), int(x) : int(x) + int(run)] = 0
    return np.kron(pixels, np.ones((scale, scale), dtype=np.uint8))


def scenario(words):
    return (
        'id = "qr"\nlevel = 1\ntitle = "Ünï 心"\naim = "To see."\n'
        f'brief = "{words}"\n# A comment that no link carries.\n\n[assignment]\nkey = "k"\n'
    )


with tempfile.TemporaryDirectory() as folder:
    folder = pathlib.Path(folder)
    noise = np.random.default_rng(7)
    for words in (1, 40, 160):
        text = scenario(" ".join(f"w{noise.integers(10**6)}" for _ in range(words)))
        file, picture = folder / "a.toml", folder / "a.svg"
        file.write_text(text, encoding="utf-8")
        link = dicrotic("link", file, "--at", "https://course.example/page/", "--qr", picture).strip()
        svg = picture.read_text(encoding="utf-8")
        for scale, turned in ((3, 0), (6, 1)):
            grey = np.rot90(raster(svg, scale), turned)
            # Grey, noisy, as a camera has it.
            grey = np.clip(grey.astype(float) * 0.6 + 40 + noise.normal(0, 12, grey.shape), 0, 255).astype(np.uint8)
            found = zxingcpp.read_barcodes(np.ascontiguousarray(grey))
            checks.check([one.text for one in found] == [link], f"{len(link)} characters at {scale} pixels a module, turned {turned}")
        packed = link.split("#a=")[1]
        plain = zlib.decompress(base64.urlsafe_b64decode(packed + "=" * (-len(packed) % 4)), wbits=-15).decode("utf-8")
        wanted = "".join(line + "\n" for line in text.splitlines() if line and not line.startswith("#"))
        checks.check(plain == wanted, f"{len(link)} characters hold the scenario without its comments")

checks.finish()
