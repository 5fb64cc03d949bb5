/** What V8 has and the parser of boat files asks for; without it, as elsewhere, nothing is lost. */
interface ErrorConstructor {
  stackTraceLimit: number;
}
