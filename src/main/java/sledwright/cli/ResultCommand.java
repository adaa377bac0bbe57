package sledwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;

/** A command that has one result. */
abstract class ResultCommand implements Callable<Integer> {

    @Mixin
    private SharedOptions shared;

    final SharedOptions shared() {
        return shared;
    }
}
