export { ChecksBody } from "./checks/checks-body.tsx";
export { GroundBody } from "./ground/ground-body.tsx";
export { HoldingBody } from "./holding/holding-body.tsx";
export { LineBody } from "./line/line-body.tsx";
export { SectionBody } from "./section/section-body.tsx";
export { TimeBody } from "./time/time-body.tsx";
export { CompareBody } from "./top-bar/compare-body.tsx";
export { GaugeBody } from "./water/gauge-body.tsx";
