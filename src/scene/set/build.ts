import type { PartModel } from "../../model/types.js";
import type { Site } from "../site.js";
import { buildBoard } from "./board.js";
import { buildBox } from "./box.js";
import { buildDisc } from "./disc.js";
import { buildFlat } from "./flat.js";
import type { Leaf } from "./leaf.js";
import { buildPaper } from "./paper.js";
import type { Piece } from "./piece.js";
import { buildCapsule, buildSphere } from "./round.js";
import { buildTable } from "./table.js";

/** Builds one piece of the set; `leaves` holds the flats built so far, for hinges. */
export function buildPiece(site: Site, piece: PartModel<"set">, leaves: Map<string, Leaf>): Piece {
  switch (piece.block) {
    case "flat":
      return buildFlat(site, piece, leaves);
    case "paper":
      return buildPaper(site, piece);
    case "card":
    case "panel":
    case "scrim":
      return buildBoard(site, piece);
    case "table":
      return buildTable(site, piece);
    case "box":
      return buildBox(site, piece);
    case "sphere":
      return buildSphere(site, piece);
    case "capsule":
      return buildCapsule(site, piece);
    case "disc":
      return buildDisc(site, piece);
    default:
      return piece satisfies never;
  }
}
