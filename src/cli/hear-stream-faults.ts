/**
 * A reader that leaves early is met quietly; any other fault of the result's stream, such as a full disk, gives exit
 * status 2. Returns whether there was one.
 */
export function hearStreamFaults(): () => boolean {
  let broken = false;
  process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
    if (fault.code === "EPIPE" || broken) return;
    broken = true;
    process.exitCode = 2;
    process.stderr.write(`error: the result could not be written: ${fault.message}\n`);
  });
  process.stderr.on("error", () => {});
  return () => broken;
}
