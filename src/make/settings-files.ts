/** Names of files with settings for the units of their folder and of those below it; of two in one folder the first goes before. */
export const settingsNames: readonly string[] = ["cutwork.yml", "cutwork.yaml"];
