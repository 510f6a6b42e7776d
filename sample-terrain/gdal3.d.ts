declare module "gdal3.js/node.js" {
  export { default } from "gdal3.js";
}
