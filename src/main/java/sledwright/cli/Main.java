package sledwright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line of Sledwright. */
@Command(
    name = "sledwright",
    version = "sledwright 0.1.0",
    mixinStandardHelpOptions = true,
    description = "Finds, proves and explains the cheapest valid server build.")
public final class Main implements Runnable {

  public static void main(String[] arguments) {
    System.exit(new CommandLine(new Main()).execute(arguments));
  }

  @Override
  public void run() {
    CommandLine.usage(this, System.out);
  }
}
