/** The commands: arguments in, text and an exit code out. The only user of the process's streams. */
package sledwright.cli;
