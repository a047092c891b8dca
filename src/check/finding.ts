export type { Finding, Fix, Related, Severity, TextEdit } from "../base/finding";
