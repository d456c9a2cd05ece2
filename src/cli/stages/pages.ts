/** Pages in Markdown. Loaded by the command that refreshes them and by no other, since it brings all the rest along. */
export { refreshPage } from "../../markdown/refresh.js";
