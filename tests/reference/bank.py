"""A question bank read by others: its items and manifest against the rules of QTI 3, its response processing carried out, its table
read with csv, and the beats of its pictures counted with scipy."""

import csv
import io
import posixpath
import re
import xml.etree.ElementTree as ET
import zipfile

import numpy as np
import xmlschema
from scipy.signal import find_peaks

from reference import ROOT, WORK, Checks, dicrotic

checks = Checks("bank")
WORK.mkdir(parents=True, exist_ok=True)
ITEM = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"
MANIFEST = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
SVG = "{http://www.w3.org/2000/svg}"
COUNT = 24
NAMES = ["01-first-wiring", "04-rest-pulse", "16-small-pulse-a", "50-after-exercise", "51-uneven-intervals", "53-whole-bench"]
SCENARIOS = [ROOT / "scenarios" / f"{name}.toml" for name in NAMES]

# No package registry carries the published files, so that their rules for the elements that stand in a bank are written down here.
# Manifest: 1EdTech QTI 3.0, imsqtiv3p0_imscpv1p2_v1p0.xsd, types Manifest, ManifestMetadata, Organizations, Resource and File.
MANIFEST_RULES = f"""<xs:schema xmlns="{MANIFEST}" xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="{MANIFEST}"
    elementFormDefault="qualified">
  <xs:element name="manifest"><xs:complexType><xs:sequence>
    <xs:element name="metadata"><xs:complexType><xs:sequence>
      <xs:element name="schema"><xs:simpleType><xs:restriction base="xs:string"><xs:enumeration value="QTI Package"/>
        <xs:enumeration value="QTI Test Bank"/><xs:enumeration value="QTI Item Bank"/><xs:enumeration value="QTI Object Bank"/>
        <xs:enumeration value="QTI Test"/><xs:enumeration value="QTI Section"/><xs:enumeration value="QTI Item"/>
        </xs:restriction></xs:simpleType></xs:element>
      <xs:element name="schemaversion"><xs:simpleType><xs:restriction base="xs:string"><xs:enumeration value="3.0.0"/>
        </xs:restriction></xs:simpleType></xs:element>
    </xs:sequence></xs:complexType></xs:element>
    <xs:element name="organizations"><xs:complexType/></xs:element>
    <xs:element name="resources"><xs:complexType><xs:sequence>
      <xs:element name="resource" minOccurs="0" maxOccurs="unbounded"><xs:complexType><xs:sequence>
        <xs:element name="file" maxOccurs="unbounded"><xs:complexType><xs:attribute name="href" use="required" type="xs:anyURI"/>
          </xs:complexType></xs:element></xs:sequence>
        <xs:attribute name="identifier" use="required" type="xs:ID"/>
        <xs:attribute name="type" use="required"><xs:simpleType><xs:restriction base="xs:string">
          <xs:enumeration value="imsqti_item_xmlv3p0"/><xs:enumeration value="imsqti_test_xmlv3p0"/>
          <xs:enumeration value="webcontent"/></xs:restriction></xs:simpleType></xs:attribute>
        <xs:attribute name="href" type="xs:anyURI"/></xs:complexType></xs:element>
    </xs:sequence></xs:complexType></xs:element></xs:sequence>
    <xs:attribute name="identifier" use="required" type="xs:ID"/></xs:complexType></xs:element>
</xs:schema>"""
# Items: 1EdTech QTI 3.0, imsqti_asiv3p0_v1p0.xsd, types AssessmentItem, ResponseDeclaration, OutcomeDeclaration, ItemBody,
# ChoiceInteraction, SimpleChoice, ResponseProcessing and ModalFeedback: the order of the children and which attributes must be
# there, for a question with one choice. Types of values that are not given away by the order are from memory.
IDENTIFIER = "<xs:restriction base='xs:string'><xs:pattern value='[\\p{L}_][\\p{L}\\p{N}_.\\-]*'/></xs:restriction>"
VALUE = '<xs:element name="qti-value" type="xs:string"/>'
DECLARED = """<xs:attribute name="identifier" use="required" type="id"/>
      <xs:attribute name="cardinality" use="required"><xs:simpleType><xs:restriction base="xs:string"><xs:enumeration value="single"/>
        <xs:enumeration value="multiple"/><xs:enumeration value="ordered"/><xs:enumeration value="record"/></xs:restriction>
        </xs:simpleType></xs:attribute>
      <xs:attribute name="base-type"><xs:simpleType><xs:restriction base="xs:string"><xs:enumeration value="identifier"/>
        <xs:enumeration value="float"/><xs:enumeration value="integer"/><xs:enumeration value="string"/></xs:restriction>
        </xs:simpleType></xs:attribute>"""
NAMED = '<xs:complexType><xs:attribute name="identifier" use="required" type="id"/></xs:complexType>'
ITEM_RULES = f"""<xs:schema xmlns="{ITEM}" xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="{ITEM}"
    elementFormDefault="qualified">
  <xs:import namespace="http://www.w3.org/XML/1998/namespace"/>
  <xs:simpleType name="id">{IDENTIFIER}</xs:simpleType>
  <xs:complexType name="set"><xs:choice>
      <xs:element name="qti-variable">{NAMED}</xs:element>
      <xs:element name="qti-base-value"><xs:complexType><xs:simpleContent><xs:extension base="xs:string">
        <xs:attribute name="base-type" use="required" type="xs:string"/></xs:extension></xs:simpleContent></xs:complexType>
        </xs:element></xs:choice>
    <xs:attribute name="identifier" use="required" type="id"/></xs:complexType>
  <xs:element name="qti-assessment-item"><xs:complexType><xs:sequence>
    <xs:element name="qti-response-declaration" minOccurs="0" maxOccurs="unbounded"><xs:complexType><xs:sequence>
      <xs:element name="qti-correct-response" minOccurs="0"><xs:complexType><xs:sequence>{VALUE}</xs:sequence></xs:complexType>
        </xs:element></xs:sequence>{DECLARED}</xs:complexType></xs:element>
    <xs:element name="qti-outcome-declaration" minOccurs="0" maxOccurs="unbounded"><xs:complexType><xs:sequence>
      <xs:element name="qti-default-value" minOccurs="0"><xs:complexType><xs:sequence>{VALUE}</xs:sequence></xs:complexType>
        </xs:element></xs:sequence>{DECLARED}<xs:attribute name="normal-maximum" type="xs:double"/></xs:complexType></xs:element>
    <xs:element name="qti-item-body" minOccurs="0"><xs:complexType><xs:sequence>
      <xs:element name="p"><xs:complexType><xs:sequence><xs:element name="img"><xs:complexType>
        <xs:attribute name="src" use="required" type="xs:anyURI"/><xs:attribute name="alt" use="required" type="xs:string"/>
        <xs:attribute name="width" type="xs:positiveInteger"/><xs:attribute name="height" type="xs:positiveInteger"/>
        </xs:complexType></xs:element></xs:sequence></xs:complexType></xs:element>
      <xs:element name="qti-choice-interaction"><xs:complexType><xs:sequence>
        <xs:element name="qti-prompt" type="xs:string" minOccurs="0"/>
        <xs:element name="qti-simple-choice" maxOccurs="unbounded"><xs:complexType><xs:simpleContent><xs:extension base="xs:string">
          <xs:attribute name="identifier" use="required" type="id"/></xs:extension></xs:simpleContent></xs:complexType></xs:element>
        </xs:sequence><xs:attribute name="response-identifier" use="required" type="id"/>
        <xs:attribute name="shuffle" type="xs:boolean"/><xs:attribute name="max-choices" type="xs:nonNegativeInteger"/>
        </xs:complexType></xs:element></xs:sequence></xs:complexType></xs:element>
    <xs:element name="qti-response-processing" minOccurs="0"><xs:complexType><xs:choice maxOccurs="unbounded">
      <xs:element name="qti-response-condition"><xs:complexType><xs:sequence>
        <xs:element name="qti-response-if"><xs:complexType><xs:sequence>
          <xs:element name="qti-match"><xs:complexType><xs:sequence><xs:element name="qti-variable">{NAMED}</xs:element>
            <xs:element name="qti-correct">{NAMED}</xs:element></xs:sequence></xs:complexType></xs:element>
          <xs:element name="qti-set-outcome-value" type="set" maxOccurs="unbounded"/></xs:sequence></xs:complexType></xs:element>
        <xs:element name="qti-response-else" minOccurs="0"><xs:complexType><xs:sequence>
          <xs:element name="qti-set-outcome-value" type="set" maxOccurs="unbounded"/></xs:sequence></xs:complexType></xs:element>
        </xs:sequence></xs:complexType></xs:element>
      <xs:element name="qti-set-outcome-value" type="set"/></xs:choice></xs:complexType></xs:element>
    <xs:element name="qti-modal-feedback" minOccurs="0" maxOccurs="unbounded"><xs:complexType><xs:sequence>
      <xs:element name="qti-content-body" minOccurs="0"><xs:complexType><xs:sequence>
        <xs:element name="p" type="xs:string" maxOccurs="unbounded"/></xs:sequence></xs:complexType></xs:element></xs:sequence>
      <xs:attribute name="outcome-identifier" use="required" type="id"/><xs:attribute name="identifier" use="required" type="id"/>
      <xs:attribute name="show-hide" use="required"><xs:simpleType><xs:restriction base="xs:string"><xs:enumeration value="show"/>
        <xs:enumeration value="hide"/></xs:restriction></xs:simpleType></xs:attribute>
      <xs:attribute name="title" type="xs:string"/></xs:complexType></xs:element>
    </xs:sequence>
    <xs:attribute name="identifier" use="required" type="xs:string"/><xs:attribute name="title" use="required" type="xs:string"/>
    <xs:attribute ref="xml:lang"/><xs:attribute name="adaptive" type="xs:boolean"/>
    <xs:attribute name="time-dependent" use="required" type="xs:boolean"/></xs:complexType></xs:element>
</xs:schema>"""
manifest_rules, item_rules = xmlschema.XMLSchema10(MANIFEST_RULES), xmlschema.XMLSchema10(ITEM_RULES)


def of(tag):
    return f"{{{ITEM}}}{tag}"


def processed(item, response):
    """The outcomes of a response, by the rules that stand in the item (QTI 3.0 information model, response processing)."""
    correct = item.find(f"{of('qti-response-declaration')}/{of('qti-correct-response')}/{of('qti-value')}").text
    outcomes = {}
    for one in item.iter(of("qti-outcome-declaration")):
        default = one.find(f"{of('qti-default-value')}/{of('qti-value')}")
        outcomes[one.get("identifier")] = None if default is None else default.text

    def carry_out(rule):
        if rule.tag == of("qti-set-outcome-value"):
            value = rule[0]
            outcomes[rule.get("identifier")] = response if value.tag == of("qti-variable") else value.text
        elif rule.tag == of("qti-response-condition"):
            # A match with nothing is no match.
            branch = rule.find(of("qti-response-if" if response is not None and response == correct else "qti-response-else"))
            for inner in branch:
                if inner.tag == of("qti-set-outcome-value"):
                    carry_out(inner)

    for rule in item.find(of("qti-response-processing")):
        carry_out(rule)
    return outcomes


def beats_seen(svg, seconds, a, b):
    """Peaks between two times of the drawn trace, by scipy."""
    trace = next(e for e in svg.iter(f"{SVG}path") if e.get("clip-path"))
    points = np.array([[float(v) for v in pair.split()] for pair in re.split("[ML]", trace.get("d"))[1:]])
    frame = next(e for e in svg.iter(f"{SVG}clipPath"))[0]
    times = (points[:, 0] - float(frame.get("x"))) / float(frame.get("width")) * seconds
    grid = np.arange(0, seconds, 0.01)
    values = np.interp(grid, times, -points[:, 1])
    # One steep climb, one beat: half of what most of the trace spans, and no two within .3 s.
    peaks, _ = find_peaks(values, prominence=0.5 * (np.percentile(values, 95) - np.percentile(values, 5)), distance=30)
    return int(np.sum((grid[peaks] > a) & (grid[peaks] < b)))


def opened(form, language):
    path = WORK / f"bank-{form}-{language}.zip"
    said = dicrotic("bank", *SCENARIOS, "--count", COUNT, "--seed", 5, "--form", form, "--language", language, "--out", path)
    checks.check(f"{COUNT} questions" in said, f"{form}: the command tells what it wrote: {said!r}")
    with zipfile.ZipFile(path) as archive:
        checks.check(archive.testzip() is None, f"{form}: the archive is whole")
        return {name: archive.read(name) for name in archive.namelist()}


NUMBERS = re.compile(r"\d+(?:[.,]\d+)?")
right_of = {}
for language in ("en", "es"):
    files = opened("qti", language)
    checks.check(next(iter(files)) == "imsmanifest.xml", "the manifest comes first, at the root")
    text = files["imsmanifest.xml"].decode()
    errors = list(manifest_rules.iter_errors(text))
    checks.check(not errors, f"manifest: {[str(e)[:400] for e in errors]}")
    manifest = ET.fromstring(text)
    listed = [e.get("href") for e in manifest.iter(f"{{{MANIFEST}}}file")]
    checks.check(sorted(listed) == sorted(set(files) - {"imsmanifest.xml"}), "every file is listed once, and none that is not there")
    resources = list(manifest.iter(f"{{{MANIFEST}}}resource"))
    checks.check(len(resources) == COUNT, f"{len(resources)} items")
    for resource in resources:
        name = resource.get("href")
        checks.check(resource.get("type") == "imsqti_item_xmlv3p0", f"{name}: {resource.get('type')}")
        source = files[name].decode()
        errors = list(item_rules.iter_errors(source))
        checks.check(not errors, f"{name}: {[str(e)[:400] for e in errors]}")
        item = ET.fromstring(source)
        checks.check(item.get("identifier") == resource.get("identifier"), f"{name}: another name in the manifest")
        checks.check(item.get("{http://www.w3.org/XML/1998/namespace}lang") == language, f"{name}: the language")
        choices = {e.get("identifier"): e.text for e in item.iter(of("qti-simple-choice"))}
        correct = item.find(f".//{of('qti-correct-response')}/{of('qti-value')}").text
        checks.check(correct in choices and 4 <= len(choices) <= 5, f"{name}: {correct} of {choices}")
        told = {e.get("identifier"): "".join(e.itertext()).strip() for e in item.iter(of("qti-modal-feedback"))}
        checks.check(told.keys() == choices.keys() and all(told.values()), f"{name}: {told}")
        for choice in choices:
            outcomes = processed(item, choice)
            checks.check(outcomes == {"SCORE": "1" if choice == correct else "0", "FEEDBACK": choice}, f"{name}: {choice} {outcomes}")
        checks.check(processed(item, None) == {"SCORE": "0", "FEEDBACK": None}, f"{name}: no answer")
        image = item.find(f".//{of('img')}")
        picture = posixpath.normpath(posixpath.join(posixpath.dirname(name), image.get("src")))
        checks.check(picture in files, f"{name}: {picture} is not there")
        svg = ET.fromstring(files[picture])
        checks.check([svg.get("width"), svg.get("height")] == [image.get("width"), image.get("height")], f"{name}: the picture's size")
        seconds, division, a, b = [float(n.replace(",", ".")) for n in NUMBERS.findall(image.get("alt"))]
        rates = {k: float(NUMBERS.match(v)[0]) for k, v in choices.items()}
        seen = beats_seen(svg, seconds, a, b)
        # 60 n / T, the definition; n as another library finds it in the picture.
        checks.check(abs(60 * seen / (b - a) - rates[correct]) < 0.5, f"{name}: {seen} beats seen in {b - a} s, {rates[correct]} called right")
        values = sorted(rates.values())
        checks.check(min(np.diff(values)) >= 4, f"{name}: {values}")
        labels = [float(e.text.split()[0]) for e in svg.iter(f"{SVG}text") if e.get("text-anchor") == "middle" and e.text[0].isdigit()]
        checks.check(len(labels) > 4 and set(np.diff(labels[:5])) == {division}, f"{name}: a division of {division} s, the axis has {labels}")
        right_of[(language, item.get("identifier"))] = choices[correct]
    # The rules do see what is wrong.
    for wrong in (
        source.replace(' show-hide="show"', ""),
        source.replace("qti-item-body", "qti-body"),
        source.replace(' time-dependent="false"', ""),
        source.replace("<qti-response-processing>", "<qti-modal-feedback/><qti-response-processing>"),
        source.replace('identifier="ANSWER-1"', 'identifier="1 2"'),
    ):
        checks.check(wrong != source and not item_rules.is_valid(wrong), "the rules for items let anything pass")
    for wrong in (text.replace("3.0.0", "3"), text.replace("<organizations/>", ""), text.replace("imsqti_item_xmlv3p0", "item")):
        checks.check(wrong != text and not manifest_rules.is_valid(wrong), "the rules for manifests let anything pass")

    files = opened("csv", language)
    rows = list(csv.DictReader(io.StringIO(files["questions.csv"].decode())))
    checks.check(len(rows) == COUNT and None not in rows[0], f"{len(rows)} lines")
    checks.check({row["picture"] for row in rows} == set(files) - {"questions.csv"}, "a picture for each line")
    for row in rows:
        right = int(row["right"])
        checks.check(row[f"answer_{right}"] == right_of[(language, row["id"])], f"{row['id']}: both forms call the same right")
        slips = [row[f"misreading_{k}"] for k in range(1, 6)]
        answers = [row[f"answer_{k}"] for k in range(1, 6)]
        checks.check(slips[right - 1] == "" and all(bool(s) == bool(a) for k, (s, a) in enumerate(zip(slips, answers)) if k != right - 1), f"{row['id']}: {slips}")
    for name, content in files.items():
        if name.endswith(".svg"):
            checks.check(ET.fromstring(content).tag == f"{SVG}svg", f"{name} is no drawing")
checks.finish()
