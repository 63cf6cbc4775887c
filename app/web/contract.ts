/**
 * The web host's routes, for both of its ends: `routes.ts` answers them, the renderer's web host asks them. Types and constants
 * only.
 *
 * Every body is JSON (`content-type: application/json`). Whoever asks must have traded the start code for the cookie; without it
 * everything under `/api/` except `POST /api/pair` answers 401.
 *
 * | ask                        | body          | answer                                                                  |
 * | -------------------------- | ------------- | ----------------------------------------------------------------------- |
 * | `POST /api/pair`           | `{ code }`    | 204 with the cookie; 403: the code is wrong or was used                 |
 * | `GET /api/documents`       |               | 200 `DocumentEntry[]`                                                   |
 * | `GET /api/sessions/:id`    |               | `Answer<Session>`: 200, or 422 with the faults                          |
 * | `GET /api/kitchens/:id`    |               | `Answer<Kitchen>`: 200, or 422                                          |
 * | `GET /api/plans/:id`       |               | `Answer<Plan>`: 200, or 422                                             |
 * | `POST /api/plans`          | `Plan`        | `Answer<DocumentEntry>`: 200, or 422                                    |
 * | `POST /api/kitchens`       | `Kitchen`     | `Answer<DocumentEntry>`: 200, or 422                                    |
 * | `POST /api/kitchen-figures`| `Kitchen`     | `Answer<KitchenFigures>`: 200, or 422                                   |
 * | `POST /api/plan-figures`   | `Plan`        | `Answer<PlanFigures>`: 200, or 422                                      |
 * | `POST /api/jobs`           | `PlanRequest` | 201 `{ job }`; 422 `Answer` with the faults of the request; 429: busy   |
 * | `POST /api/helps`          | `PlanRequest` | as `POST /api/jobs`; its events tell `HelpProgress` and `HelpResult`    |
 * | `GET /api/jobs/:job/events`|               | server-sent events: `progress` with `PlanProgress`, which brings the    |
 * |                            |               | best plan so far when there is a better one; then one `done`            |
 * |                            |               | with `PlanResult`, after which the stream ends. Told again from the     |
 * |                            |               | last of each when asked again                                           |
 * | `POST /api/jobs/:job/stop` | `{}`          | 204; the best so far then comes as `done`                               |
 *
 * Other answers: 401 not paired, 403 foreign `Origin` or `Host`, 404 no such route or job, 413 body too large, 415 not JSON. Their
 * body is `Refusal`.
 *
 * The page is opened as `/#code=…`. It takes the code out of the address (`history.replaceState`) before anything else, asks
 * `POST /api/pair`, and from then on is known by the cookie alone; a reload without a code tries `GET /api/documents` at once.
 */

/** Body of an answer that is no answer. */
export interface Refusal {
  /** A sentence that can be shown. */
  readonly error: string;
}

/** Key of the start code in the address's fragment: `#code=…`. */
export const CODE_KEY = 'code';
