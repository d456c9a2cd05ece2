import { renderJson } from "../../render/json.js";
import type { Remark } from "../../render/remark.js";
import { fileAsData } from "../check/data.js";
import type { Examination, Examined } from "../check/examine.js";
import { examineAll, jobLimit } from "../check/examine-all.js";
import { freshFindings } from "../check/fresh.js";
import { findingRemark, remarksOf } from "../check/remarks.js";
import { countsOf, sumOf } from "../check/summary.js";
import { bookAsText, fileAsText } from "../check/texts.js";
import { CLEAN, FOUND, TROUBLE } from "../exit.js";
import { misuse, type Session } from "../session.js";
import { type Language, type Light, language, light } from "../stages/load.js";
import { sayProblem } from "../texts.js";
import { warningLimit } from "../verdict.js";
import { version } from "../version.js";

/** One form of the command's output: it takes what came of each file, in order, and then ends. */
interface Form {
  take(examination: Examination): void;
  end(): void;
}

function textForm(session: Session, stage: Language, views: Light | null, several: boolean): Form {
  const all: Examined[] = [];
  const fresh = freshFindings();
  return {
    take({ examined }) {
      if (examined === undefined) return;
      all.push(examined);
      session.io.out(fileAsText(session, stage, views, examined, fresh(examined)));
    },
    end() {
      if (several && all.length > 0) session.io.out(bookAsText(all));
    },
  };
}

function jsonForm(session: Session, stage: Language): Form {
  const all: Examined[] = [];
  const files: unknown[] = [];
  return {
    take({ examined }) {
      if (examined === undefined) return;
      all.push(examined);
      files.push(fileAsData(stage, examined));
    },
    end() {
      session.io.out(renderJson({ format: 1, files, total: sumOf(all.map(countsOf)) }));
    },
  };
}

function remarkForm(stage: Language, take: (remarks: readonly Remark[]) => void, end: () => void): Form {
  const fresh = freshFindings();
  return {
    take({ examined, problem }) {
      take(
        examined === undefined
          ? [findingRemark(stage, problem, null)]
          : remarksOf(stage, examined, fresh(examined)),
      );
    },
    end,
  };
}

function formOf(session: Session, stage: Language, views: Light | null, several: boolean): Form {
  switch (session.options.get("format")) {
    case "json":
      return jsonForm(session, stage);
    case "annotations":
      return remarkForm(
        stage,
        (remarks) => session.io.out(stage.renderAnnotations(remarks)),
        () => undefined,
      );
    case "sarif": {
      const all: Remark[] = [];
      const end = (): void => {
        const rules = [...stage.pagesOfFindings(), ...(views?.pagesOfWarnings() ?? [])];
        session.io.out(renderJson(stage.sarifLog(all, { name: "halfshade", version }, rules)));
      };
      return remarkForm(stage, (remarks) => all.push(...remarks), end);
    }
    default:
      return textForm(session, stage, views, several);
  }
}

/** `halfshade check FILE...`: everything that is wrong, and nothing else. */
export async function checkCommand(session: Session): Promise<number> {
  const limit = warningLimit(session);
  if (typeof limit === "object" && limit !== null) return misuse(session, limit.problem);
  const jobs = jobLimit(session);
  if (typeof jobs === "object" && jobs !== null) return misuse(session, jobs.problem);
  const stage = await language();
  const book = stage.filesOf(session.operands);
  if (book.problem !== undefined) return misuse(session, book.problem);
  const views = session.options.has("no-light") ? null : await light();
  const form = formOf(session, stage, views, book.gathered || book.files.length > 1);
  let exit = CLEAN;
  await examineAll(session, stage, views, book.files, (examination) => {
    form.take(examination);
    const { examined, problem } = examination;
    if (problem !== undefined) {
      sayProblem(session, stage, problem);
      exit = TROUBLE;
      return;
    }
    const { errors, passed, expectations, warnings } = countsOf(examined);
    if (errors > 0 || passed < expectations) exit = Math.max(exit, FOUND);
    if (limit !== null && (warnings ?? 0) > limit) exit = Math.max(exit, FOUND);
  });
  form.end();
  return exit;
}
