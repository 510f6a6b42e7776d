import { describe, expect, it } from "vitest";
import { refusal, rowWords, understood } from "../helpers/read-forecast.ts";

const SPACES = [
  'xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xmlns:gml="http://www.opengis.net/gml/3.2"',
  'xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:wml2="http://www.opengis.net/waterml/2.0"',
  'xmlns:om="http://www.opengis.net/om/2.0" xmlns:swe="http://www.opengis.net/swe/2.0"',
].join(" ");
const value = (inner: string, metadata = "") =>
  `<wml2:point><wml2:MeasurementTVP>${inner}${metadata && `<wml2:metadata><wml2:TVPMeasurementMetadata>${metadata}</wml2:TVPMeasurementMetadata></wml2:metadata>`}</wml2:MeasurementTVP></wml2:point>`;
const nil = '<wml2:nilReason xlink:href="http://www.opengis.net/def/nil/OGC/0/missing"/>';

/**
 * The example of OGC 10-126r4, 10.9 (measurement time series, equidistant, default point metadata, a nil value), as in
 * the schema's encoding_examples/xsd-measurement-timeseries-tvp.xml: times and values of the standard. Its unit code
 * "ms" is no length, so that the reader is told meters.
 */
const EQUIDISTANT = `<wml2:MeasurementTimeseries gml:id="xsd-measurement-timeseries-tvp.example" ${SPACES}>
<wml2:metadata><wml2:MeasurementTimeseriesMetadata>
<wml2:temporalExtent><gml:TimePeriod gml:id="time-period.1"><gml:beginPosition>2011-11-21T12:27:00+10:00</gml:beginPosition><gml:endPosition>2011-11-21T12:30:00+10:00</gml:endPosition></gml:TimePeriod></wml2:temporalExtent>
<wml2:baseTime>2011-11-21T12:27:00+10:00</wml2:baseTime><wml2:spacing>PT1M</wml2:spacing>
</wml2:MeasurementTimeseriesMetadata></wml2:metadata>
<wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata><wml2:uom code="ms"/></wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>
${value("<wml2:value>3.0</wml2:value>")}
${value("<wml2:value>3.2</wml2:value>", '<wml2:accuracy><swe:Quantity><swe:uom code="m"/><swe:value>0.1</swe:value></swe:Quantity></wml2:accuracy>')}
${value('<wml2:value xsi:nil="true"/>', nil)}
${value("<wml2:value>3.63</wml2:value>")}
</wml2:MeasurementTimeseries>`;

describe("WaterML 2.0, OGC 10-126r4, 10.9", () => {
  it("equidistant values from a base time, a nil one left out", () => {
    const read = understood(EQUIDISTANT, { units: "metric" });
    expect(rowWords(read)).toEqual([
      "2011-11-21T12:27+10:00 3.00",
      "2011-11-21T12:28+10:00 3.20",
      "2011-11-21T12:30+10:00 3.63",
    ]);
    expect(read.leftOut).toMatchObject([{ place: { line: 9 }, why: "missing" }]);
    expect(read.notes).toContainEqual({ kind: "unit-given", unit: "metric", written: "ms" });
  });

  it("refuses a unit that is no length", () => {
    expect(refusal(EQUIDISTANT)).toMatchObject({
      code: "forecast/unit",
      words: expect.stringContaining('"ms"'),
    });
  });
});

const observation = (station: string, property: string, unit: string, points: string) =>
  `<wml2:observationMember><om:OM_Observation gml:id="o-${station}-${unit.length}">
<om:observedProperty xlink:href="http://example.org/${property}" xlink:title="${property}"/>
<om:featureOfInterest xlink:href="http://example.org/${station}" xlink:title="${station}"/>
<om:result><wml2:MeasurementTimeseries gml:id="s-${station}-${unit.length}">
<wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata><wml2:quality xlink:href="http://www.opengis.net/def/waterml/2.0/quality/good"/><wml2:uom code="${unit}"/></wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>
${points}
</wml2:MeasurementTimeseries></om:result></om:OM_Observation></wml2:observationMember>`;
const collection = (...members: string[]) =>
  `<wml2:Collection ${SPACES}>${members.join("\n")}</wml2:Collection>`;
const timed = (at: string, level: string, metadata = "") =>
  value(`<wml2:time>${at}</wml2:time><wml2:value>${level}</wml2:value>`, metadata);
const quality = (word: string) =>
  `<wml2:quality xlink:href="http://www.opengis.net/def/waterml/2.0/quality/${word}"/>`;

/** Invented values in the form of OGC 10-126r4, 10.4 and 10.6: a collection of observations. */
describe("a collection of WaterML 2.0", () => {
  const stage = observation(
    "Weir",
    "Gage height",
    "[ft_i]",
    [
      timed("2026-04-06T07:00:00-05:00", "31.2"),
      timed("2026-04-06T13:00:00.000-05:00", "31.6", quality("suspect")),
      timed("2026-04-06T19:00:00-05:00", "31.7", quality("missing")),
      timed(
        "2026-04-07T01:00:00-05:00",
        "31.9",
        '<wml2:censoredReason xlink:href="x/AboveDetection"/>',
      ),
    ].join("\n"),
  );
  const flow = observation("Weir", "Discharge", "m3/s", timed("2026-04-06T07:00:00-05:00", "300"));

  it("takes the level beside a flow, in feet, with what is doubtful and what is left out", () => {
    const read = understood(collection(flow, stage));
    expect(read).toMatchObject({
      from: "waterml",
      levels: "stage",
      unit: "us",
      series: "Weir, Gage height",
    });
    expect(rowWords(read)).toEqual([
      "2026-04-06T07:00-05:00 31.20",
      "2026-04-06T13:00-05:00 31.60",
    ]);
    expect(read.leftOut.map(({ why }) => why)).toEqual(["missing", "censored"]);
    expect(read.notes).toContainEqual({ kind: "doubtful", code: "suspect", rows: 1 });
  });

  it("asks which of two gauges, and for the clock of times without an offset", () => {
    const other = observation("Dam", "Water level", "m", timed("2026-04-06T07:00:00", "9"));
    expect(refusal(collection(stage, other)).code).toBe("forecast/which");
    expect(refusal(collection(other)).code).toBe("forecast/zone-needed");
    const read = understood(collection(stage, other), { series: "Dam", zone: "America/Chicago" });
    expect(rowWords(read)).toEqual(["2026-04-06T07:00-05:00 9.00"]);
  });

  it("reads domain and range, as in the informative schema beside the standard", () => {
    const text = `<om:OM_Observation ${SPACES} xmlns:dr="http://www.opengis.net/waterml-dr/2.0"><om:observedProperty xlink:title="Stage"/><om:result><dr:MeasurementTimeseriesDomainRange><gml:domainSet><dr:TimePositionList><dr:timePositionList>2026-04-06T07:00:00Z 2026-04-06T13:00:00Z</dr:timePositionList></dr:TimePositionList></gml:domainSet><gml:rangeSet><gml:QuantityList uom="m">9.1 9.4</gml:QuantityList></gml:rangeSet></dr:MeasurementTimeseriesDomainRange></om:result></om:OM_Observation>`;
    expect(rowWords(understood(text))).toEqual([
      "2026-04-06T07:00+00:00 9.10",
      "2026-04-06T13:00+00:00 9.40",
    ]);
    expect(refusal(text.replace("9.1 9.4", "9.1")).words).toContain("cut off");
  });

  it.each([
    ["a file cut off", collection(stage).slice(0, 900), "forecast/xml"],
    ["entities", `<!DOCTYPE a [<!ENTITY b "c">]>${collection(stage)}`, "forecast/xml"],
    [
      "WaterML 1",
      '<timeSeriesResponse xmlns="http://www.cuahsi.org/waterML/1.1/"/>',
      "forecast/waterml",
    ],
    ["a flow alone", collection(flow), "forecast/no-level"],
    ["a word for a level", collection(stage.replace("31.2", "high")), "forecast/level"],
    [
      "a point without a time",
      collection(stage.replace(/<wml2:time>.*?<\/wml2:time>/, "")),
      "forecast/waterml",
    ],
  ])("refuses %s", (_what, text, code) => expect(refusal(text).code).toBe(code));
});
