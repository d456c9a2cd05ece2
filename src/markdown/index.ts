/**
 * Pages in Markdown that hold recipes: plugins of remark and markdown-it, and the refreshing of marked blocks.
 *
 * @packageDocumentation
 */
export { markdownItHalfshade, type PagePrinter, type PageToken } from "./markdown-it.js";
export type { PageOptions, PageProblem } from "./page.js";
export { type Refreshed, type RefreshedBlock, refreshPage } from "./refresh.js";
export { remarkHalfshade, type TreeFile, type TreeNode } from "./remark.js";
