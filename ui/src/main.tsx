/**
 * The page of Steelyard.
 *
 * Views. The address after # names a screen (state/route.ts); screens/ has one
 * file or folder for each: the room, a machine, its explanation, the building
 * of a new one, a comparison, the people. parts/ has the controls they are made
 * of; a control knows no other.
 *
 * Data. Everything is computed by the server in Go. state/ holds what the page
 * knows, in signals; a control reads signals and is drawn anew when one
 * changes. server/client.ts sends typed requests (api.ts is written from the Go
 * types); server/latest.ts keeps one quick question in flight while something
 * is dragged and drops late answers. drawing/ turns numbers into places on the
 * screen: pure functions, tested alone.
 *
 * Text of people goes into the document as text only. Every English string is
 * in words.ts.
 *
 * To look inside: `npx vite` serves this folder with requests passed on to a
 * running program (vite.config.ts names the port), and the browser's list of
 * performance measures has one "steelyard:drag" for each move that was painted.
 */

import "./style/theme.css";
import "./style/shell.css";
import "./style/controls.css";
import "./style/room.css";
import "./style/drawing.css";
import "./style/machine.css";
import "./style/explain.css";
import "./style/screens.css";
import "./style/build.css";
import "./style/print.css";

import { render } from "preact";
import { App } from "./app.tsx";

render(<App />, document.getElementById("page")!);
