/**
 * The address of a module worker that runs under the page's content security policy. A worker started from its own
 * file takes only the policy that the server sends with that file, which on a plain web server is none; one started
 * from a blob takes the page's.
 */
export function underPagePolicy(worker: string): string {
  const whole = new URL(worker, document.baseURI).href;
  const start = new Blob([`import ${JSON.stringify(whole)};`], { type: "text/javascript" });
  return URL.createObjectURL(start);
}
