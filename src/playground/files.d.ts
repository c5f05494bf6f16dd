/** A file that webpack puts into the page, as a data: address. */
declare module "*.xlsx" {
  const url: string;
  export default url;
}
declare module "*.css";
