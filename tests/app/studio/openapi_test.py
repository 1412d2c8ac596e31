#!/usr/bin/env python3
"""docs/openapi.yaml against the running server: the same addresses and methods, and every answer as described, good and bad."""

import json
import os
import pathlib
import shutil
import struct
import subprocess
import sys
import time
import zlib

import jsonschema
import yaml

from studio_server import Server, check, folder, put_project


class Described:
    def __init__(self, document):
        self.document = document
        self.seen = set()

    def follow(self, node):
        while isinstance(node, dict) and "$ref" in node:
            name = node["$ref"]
            node = self.document
            for step in name.removeprefix("#/").split("/"):
                node = node[step]
        return node

    def routes(self):
        return {f"{method.upper()} {address}" for address, item in self.document["paths"].items() for method in item if method != "parameters"}

    def check(self, method, address, answer):
        what = f"{method} {address} ({answer.status})"
        responses = self.document["paths"][address][method.lower()]["responses"]
        self.seen.add(f"{method} {address}")
        described = self.follow(responses.get(str(answer.status), responses.get("default")))
        check(described, f"{what} is not described: {answer.body[:300]}")
        check(not (answer.status >= 400 and "default" not in responses), f"{what}: {answer.body[:300]}")
        sent = answer.headers["Content-Type"]
        check(sent in described["content"] or "*/*" in described["content"], f"{what} comes as {sent}")
        if sent != "application/json":
            return answer
        schema = {**described["content"].get("application/json", {}).get("schema", {}), "components": self.document["components"]}
        errors = list(jsonschema.Draft202012Validator(schema).iter_errors(answer.json()))
        check(not errors, f"{what}: {errors[0].message if errors else ''} at {list(errors[0].absolute_path) if errors else ''}")
        return answer


def photograph_of(card, bead):
    """A photograph as a PNG: a card on the left, a bead's colour on the right."""
    width, height = 64, 40
    rows = b"".join(b"\0" + bytes([card] * 3) * 32 + bytes(bead) * 32 for _ in range(height))
    part = lambda name, data: struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + part(b"IHDR", head) + part(b"IDAT", zlib.compress(rows)) + part(b"IEND", b"")


def main():
    program, source = sys.argv[1], pathlib.Path(sys.argv[2])
    document = yaml.safe_load((source / "docs/openapi.yaml").read_text())
    described = Described(document)
    project_schema = json.loads((source / "schema/project.schema.json").read_text())
    with folder() as place, folder() as data:
        os.environ["XDG_DATA_HOME"] = data  # where the designer's own stock is
        put_project(place)
        for name in ("moonwatch", "moonwatch-necklace"):
            shutil.copy(source / f"examples/{name}.evencount.json", place)
        os.environ["XDG_DATA_HOME"] = str(pathlib.Path(place) / ".data")  # an own stockroom, not the user's
        server = Server(program, place)

        def call(method, address, body=None, query="", **names):
            target = address
            for name, value in names.items():
                target = target.replace("{" + name + "}", str(value))
            return described.check(method, address, server.call(method, target + query, body))

        about = call("GET", "/api/about").json()
        check(set(about["routes"]) == described.routes(), f"routes differ: {set(about['routes']) ^ described.routes()}")
        text = document["components"]["schemas"]["Operation"]["description"]
        for name in about["operations"]:
            check(name in text.replace(",", " ").replace(".", " ").split(), f"operation {name} is not described")
        check(all(server.raw("GET", "/?key=" + server.key).headers["Set-Cookie"].split("; ")[1:] == ["Path=/", "HttpOnly", "SameSite=Strict"] for _ in range(2)), "cookie")
        call("POST", "/api/pair", {"code": "1"})
        call("GET", "/api/tables")
        for bead in ("cylinder-11", "nothing"):
            call("GET", "/api/fit", query=f"?form=lens:17x5x9&bead={bead}")
            call("GET", "/api/fit/section", query=f"?form=lens:17x5x9&bead={bead}")
        check(server.call("GET", "/api/fit?form=outline:/etc/passwd,length=9&bead=cylinder-11").status in (400, 422), "a file can be asked for")
        call("GET", "/api/projects")
        for body, status in [({"title": "A new one"}, 201), ({"example": "moonwatch"}, 201), ({"example": "nothing"}, 404), ([], 422), ({"x": 1}, 422)]:
            answer = call("POST", "/api/projects", body)
            check(answer.status == status, f"creating by {body}: {answer.body}")
        moon = "moonwatch"
        state = call("GET", "/api/projects/{project}", project=moon).json()
        jsonschema.validate(state["project"], project_schema)
        call("GET", "/api/projects/{project}", project="nothing")
        file = call("GET", "/api/projects/{project}/file", project=moon)
        check(file.json() == state["project"], "the file is not the project's own")
        copy = call("POST", "/api/projects/{project}/duplicate", project=moon).json()["id"]
        for query in ("?kits=3", "?kits=2&size=M&pick=true&swap=A=B", "?size=nobody", "?kits=0", "?swap=B", "?stock=true"):
            call("GET", "/api/projects/{project}/supplies", query=query, project=moon)
        text = call("GET", "/api/projects/{project}/words", project=moon).body
        check(len(call("POST", "/api/read", text).json()["bands"]) == len(state["project"]["bands"]), "the words of all bands read back")
        call("GET", "/api/projects/{project}/proof", project=moon)
        call("GET", "/api/projects/{project}/thumbnail", project=moon)
        for example in (moon, "nothing"):
            call("GET", "/api/examples/{example}/thumbnail", example=example)
        for view in ("shape", "words", "rows", "thread", "fit", "faces"):
            for band in (0, 99):
                call("GET", "/api/projects/{project}/bands/{band}/" + view, project=moon, band=band)
        rows = call("GET", "/api/projects/{project}/bands/{band}/rows", project=moon, band=0).json()["rows"]
        band = state["project"]["bands"][0]
        check(sum(len(row["cells"]) for row in rows) == 2 * band["columns"] * band["edge"], "rows leave cells out")
        words = server.call("GET", f"/api/projects/{moon}/bands/0/words").json()
        lines = "\n".join([words["heading"], words["facts"]] + [f"{line['label']}: {line['beads']}" for line in words["lines"]])
        read = call("POST", "/api/read", lines.encode()).json()["bands"]
        check((read[0]["columns"], read[0]["edge"]) == (band["columns"], band["edge"]), "the words read back to another size")
        call("POST", "/api/read", "nothing")
        for shape in ("settled", "flat", "nothing"):
            positions = call("GET", "/api/projects/{project}/bands/{band}/positions", query=f"?shape={shape}", project=moon, band=0)
        positions = server.call("GET", f"/api/projects/{moon}/bands/0/positions").body
        magic, count, reals, closed, links = struct.unpack_from("<4sIIII", positions)
        check((magic, reals, closed) == (b"EvB2", 8, 1) and count == band["columns"] * band["edge"], "positions' head")
        check(len(positions) == 20 + count * 4 * (1 + reals) + links * 8, "positions' length")
        mouths = struct.unpack_from(f"<{2 * links}I", positions, len(positions) - 8 * links)
        check(links > count and max(mouths) < 2 * count, "thread between mouths that are there")
        axis = struct.unpack_from("<8f", positions, 20 + 4 * count)[3:6]
        check(abs(sum(part * part for part in axis) - 1) < 1e-5, "an axis that is no unit")
        section = call("GET", "/api/projects/{project}/bands/{band}/form", project=moon, band=0).json()["section"]
        check(max(x for x, _ in section) - min(x for x, _ in section) == 16, "a section as wide as its form")
        for drawing in ("chart", "band", "steps", "section", "nothing"):
            call("GET", "/api/projects/{project}/bands/{band}/drawings/{drawing}", project=moon, band=0, drawing=drawing)
        call("GET", "/api/projects/{project}/bands/{band}/drawings/{drawing}", query="?signs=letters&seen=deutan&cell=5mm", project=moon, band=0, drawing="chart")
        call("GET", "/api/projects/{project}/strand", project="moonwatch-necklace")
        call("GET", "/api/projects/{project}/strand", query="?measure=x", project="moonwatch-necklace")
        call("GET", "/api/projects/{project}/strand", project="test")
        for name in (moon, "test"):
            layout = call("GET", "/api/projects/{project}/strand/layout", project=name).json()
            check((layout["layout"] is None) == (name == "test"), "a layout")
        for name, query in ((moon, "?lie=worn"), (moon, "?lie=flat&measure=172mm"), ("moonwatch-necklace", ""), (moon, "?lie=x"), ("test", "")):
            placed = call("GET", "/api/projects/{project}/strand/placements", query=query, project=name).json()
            check("things" not in placed or all(0 <= thing[0] < len(placed["elements"]) for thing in placed["things"]), "a thing of nothing")
        for drawing in ("flat", "worn", "nothing"):
            call("GET", "/api/projects/{project}/strand/drawings/{drawing}", project="moonwatch-necklace", drawing=drawing)
        along = call("POST", "/api/projects/{project}/along", project=moon).json()["id"]
        edit = {"do": "set", "band": 0, "cells": [[0, 0]], "letter": "B"}
        would = call("POST", "/api/projects/{project}/preview", edit, query="?revision=0", project="test").json()
        did = call("POST", "/api/projects/{project}/operations", edit, query="?revision=0", project="test").json()
        check(would["revision"] == 0 and would["patch"] == did["patch"] and did["patch"], "a preview is what is done")
        check(call("POST", "/api/projects/{project}/preview", {**edit, "letter": "C"}, query="?revision=0", project="test").status == 409, "409")
        check(call("POST", "/api/projects/{project}/operations", {**edit, "letter": "C"}, query="?revision=0", project="test").status == 409, "409")
        call("POST", "/api/projects/{project}/operations", {"do": "add_band", "columns": 4, "edge": 6}, query="?revision=1", project="test")
        call("POST", "/api/projects/{project}/operations", {"do": "change_texts", "subtitle": "x"}, query="?revision=2", project="test")
        call("POST", "/api/projects/{project}/operations", {"do": "?"}, query="?revision=2", project="test")
        for _ in range(2):
            call("POST", "/api/projects/{project}/redo", query="?revision=3", project="test")
        call("POST", "/api/projects/{project}/undo", query="?revision=3", project="test")
        call("POST", "/api/projects/{project}/undo", query="?revision=3", project="test")
        call("POST", "/api/projects/{project}/redo", query="?revision=4", project="test")
        call("POST", "/api/projects/{project}/save", project="test")
        check(len(call("GET", "/api/projects/{project}/history", query="?count=2", project="test").json()["revisions"]) == 2, "history")
        check(len(call("GET", "/api/projects/{project}/patches", query="?after=1", project="test").json()["patches"]) == 4, "patches")
        call("GET", "/api/projects/{project}/patches", query="?after=77", project="test")
        job = call("POST", "/api/projects/{project}/booklet", query="?paper=letter", project=moon).json()["id"]
        call("POST", "/api/projects/{project}/booklet", query="?paper=x", project=moon)
        while (view := call("GET", "/api/jobs/{job}", job=job).json())["state"] in ("waiting", "running"):
            time.sleep(0.05)
        check(view["state"] == "done", f"the booklet: {view}")
        call("GET", "/api/jobs")
        page = call("GET", "/api/jobs/{job}/parts/{part}", job=along, part="along.html")
        check(page.status == 200 and page.headers["Content-Disposition"].startswith("attachment"), "the stitch-along page")
        pdf = call("GET", "/api/jobs/{job}/parts/{part}", job=job, part="booklet.pdf")
        check(pdf.body.startswith(b"%PDF") and pdf.headers["Content-Type"] == "application/pdf", "no PDF")
        check(call("GET", "/api/jobs/{job}/parts/{part}", job=job, part="page-001.png").body.startswith(b"\x89PNG"), "no preview")
        call("GET", "/api/jobs/{job}/parts/{part}", job=job, part="nothing")
        call("GET", "/api/jobs/{job}", job="99")
        call("DELETE", "/api/jobs/{job}", job=job)
        shot = {"band": "New moon", "size": "48x36", "samples": 2, "view": "table", "light": "window", "ground": "linen", "turn": 30}
        render = call("POST", "/api/projects/{project}/render", shot, project=moon).json()["id"]
        for wrong in ({"view": "x"}, {"size": "x"}, {"samples": 0}, {"blur": "x"}, {"form_colour": "x"}, {"unknown": 1}):
            check(call("POST", "/api/projects/{project}/render", wrong, project=moon).status in (400, 422), f"a picture of {wrong}")
        while (view := call("GET", "/api/jobs/{job}", job=render).json())["state"] in ("waiting", "running"):
            time.sleep(0.05)
        check(view["state"] == "done" and view["shown"] >= 1, f"the picture: {view}")
        check(call("GET", "/api/jobs/{job}/parts/{part}", job=render, part="picture.png").body.startswith(b"\x89PNG"), "no picture")
        covered = call("POST", "/api/projects/{project}/booklet", query=f"?cover={render}", project=moon).json()["id"]
        check(call("POST", "/api/projects/{project}/booklet", query="?cover=99", project=moon).status == 404, "a cover from nowhere")
        check(call("POST", "/api/projects/{project}/booklet", query=f"?cover={job}", project=moon).status == 404, "a cover that is no picture")
        other = call("POST", "/api/projects/{project}/duplicate", project=moon).json()["id"]
        check(call("POST", "/api/projects/{project}/booklet", query=f"?cover={render}", project=other).status == 404, "another project's cover")
        while (view := call("GET", "/api/jobs/{job}", job=covered).json())["state"] in ("waiting", "running"):
            time.sleep(0.05)
        check(view["state"] == "done", f"a booklet with a picture: {view}")
        large = call("POST", "/api/projects/{project}/render", {"samples": 4096}, project=moon).json()["id"]
        while call("GET", "/api/jobs/{job}", job=large).json()["shown"] == 0:
            time.sleep(0.05)
        check(call("GET", "/api/jobs/{job}/parts/{part}", job=large, part="picture.png").status == 200, "what is shown of a picture")
        call("DELETE", "/api/jobs/{job}", job=large)
        while (view := call("GET", "/api/jobs/{job}", job=large).json())["state"] == "running":
            time.sleep(0.05)
        check(view["state"] == "cancelled", f"a picture that was called off: {view}")
        picture = call("POST", "/api/pictures", (source / "examples/pictures/moon.png").read_bytes()).json()["picture"]
        call("POST", "/api/pictures", "no picture")
        for card, bead in [("0,0,20,20", "30,30,9,9"), ("x", "30,30,9,9"), ("0,0,20,20", "0,0,9,9")]:
            call("GET", "/api/pictures/{picture}/colour", query=f"?card={card}&bead={bead}&card_is=0.5", picture=picture)
        call("GET", "/api/pictures/{picture}/colour", picture="99")
        photograph = call("POST", "/api/pictures", photograph_of(0xB0, (0x80, 0x40, 0x20))).json()["picture"]
        measured = call("GET", "/api/pictures/{picture}/colour", query="?card=2,2,20,20&bead=42,12,16,16", picture=photograph)
        check(measured.status == 200 and measured.json()["pixels"] == 256, f"measuring: {measured.body}")
        check(call("GET", "/api/stock").json() == {"items": [], "found": 0, "owned": 0}, "a stock from nowhere")
        subprocess.run([program, "stock", "import", source / "examples/stock/beads.csv"], check=True, stdout=subprocess.DEVNULL)
        owned = call("GET", "/api/stock").json()["items"]
        near = call("GET", "/api/stock", query=f"?near=%23{owned[-1]['colour'][1:]}&count=3").json()["items"]
        check(near[0]["difference"] == 0 and len(near) == 3, f"the nearest: {near}")
        finish, size = owned[0]["finish"], owned[0]["size"]
        found = call("GET", "/api/stock", query=f"?finish={finish}&size={size}&words={owned[0]['code']}").json()["items"]
        check([item["code"] for item in found] == [owned[0]["code"]], f"found: {found}")
        added = server.call("POST", "/api/projects/moonwatch-necklace/operations?revision=0", {"do": "add_legend_entry", "entry": owned[0]["entry"]})
        check(added.status == 200, f"a bead of the stock for the legend: {added.body}")
        for query in ("?near=x", "?finish=x", "?size=x", "?count=0"):
            check(call("GET", "/api/stock", query=query).status in (400, 422), query)
        palette = call("GET", "/api/projects/{project}/palette", project=moon).json()
        letters = [entry["letter"] for entry in state["project"]["legend"]]
        check([entry["letter"] for entry in palette["entries"]] == letters, "the palette's letters")
        check(len(palette["pairs"]) == len(letters) * (len(letters) - 1) // 2, "the palette's pairs")
        check(sum(entry["beads"] for entry in palette["entries"]) == sum(b["columns"] * b["edge"] * b.get("copies", 1) for b in state["project"]["bands"]), "the palette's beads")
        resized = call("POST", "/api/projects/{project}/resized", {"beads": {"": "cylinder-10"}}, project=moon).json()
        check(resized["bands"][0]["before"]["beads"] == band["columns"] * band["edge"], f"before: {resized['bands'][0]}")
        done = server.call("POST", f"/api/projects/{moon}/operations?revision=0", {"do": "resize", "beads": {"": "cylinder-10"}})
        check(done.status == 200, f"resizing: {done.body}")
        now = server.call("GET", f"/api/projects/{moon}").json()["project"]["bands"]
        sizes = {b["name"]: (b["columns"], b["edge"]) for b in now}
        check(all(sizes[b["name"]] == (b["after"]["columns"], b["after"]["edge"]) for b in resized["bands"]), "resized otherwise than foretold")
        for body in ({"beads": {"": "x"}}, {"beads": 1}, {"forms": {"": 1}}, {"forms": {"": "x"}}, {"carry": "x"}, {"flat": "x"}, {"x": 1}, []):
            check(call("POST", "/api/projects/{project}/resized", body, project=moon).status in (400, 422), f"resizing by {body}")
        wanted = {"picture": picture, "stock": "legend", "name": "Picture", "columns": 10, "edge": 12, "colours": 2, "quick": True}
        for body in ({**wanted, "picture": "99"}, {**wanted, "stock": "all"}, {**wanted, "x": 1}, {**wanted, "columns": "ten"}, []):
            check(call("POST", "/api/projects/{project}/picture", body, project="test").status in (404, 422), f"a picture by {body}")
        laid = call("POST", "/api/projects/{project}/picture", wanted, project="test").json()["id"]
        while (view := call("GET", "/api/jobs/{job}", job=laid).json())["state"] in ("waiting", "running"):
            time.sleep(0.05)
        check(view["state"] == "done" and view["summary"]["band"] == "Picture", f"the picture: {view}")
        would = call("POST", "/api/jobs/{job}/preview", job=laid).json()
        applied = call("POST", "/api/jobs/{job}/apply", job=laid)
        check(would["patch"] == applied.json()["patch"], "a job's preview is what is done")
        check(applied.status == 200 and applied.json()["revision"] == 6, f"applying: {applied.body}")
        call("POST", "/api/jobs/{job}/apply", job=job)
        binned = call("DELETE", "/api/projects/{project}", project=copy).json()["bin"]
        call("DELETE", "/api/projects/{project}", project=copy)
        check(call("POST", "/api/bin/{binned}/restore", binned=binned).json()["id"] == copy, "not put back")
        check(call("POST", "/api/bin/{binned}/restore", binned=binned).status == 404, "put back twice")
        connection = server.connect()
        connection.request("GET", "/api/events", headers=server.own_headers())
        stream = connection.getresponse()
        described.seen.add("GET /api/events")
        check(stream.headers["Content-Type"] == "text/event-stream", "no stream")
        server.call("POST", "/api/projects/test/operations?revision=6", edit | {"letter": "A"})
        told = ""
        while "event: project\n" not in told:
            told += stream.readline().decode()
        told = stream.readline().decode()
        check(json.loads(told.removeprefix("data: "))["id"] == "test", told)
        connection.close()
        check(server.call("HEAD", "/api/projects").body == b"", "HEAD has a body")
        check(described.seen == described.routes(), f"not tried: {described.routes() - described.seen}")
        server.end()
        print(f"{len(described.seen)} addresses answer as described")


main()
