package sledwright.desk;

import java.util.List;
import java.util.function.Function;
import sledwright.input.Fault;

/** What comes back from the desk. */
public sealed interface Reply<A> {

    /** The question was answered, also where the answer is that there is no build. */
    record Answered<A>(A answer) implements Reply<A> {
    }

    /**
     * Something is wrong in what was read.
     *
     * @param faults all of them; at least one
     */
    record Faulty<A>(List<Fault> faults) implements Reply<A> {

        public Faulty {
            faults = List.copyOf(faults);
        }
    }

    /** Something is wrong with what was asked beside it. */
    record Misasked<A>(Misasking what) implements Reply<A> {
    }

    /** The same with what is made of the answer. */
    default <B> Reply<B> map(Function<A, B> made) {
        return then(answer -> new Answered<>(made.apply(answer)));
    }

    /** The reply to what is asked next of the answer, where there is one. */
    default <B> Reply<B> then(Function<A, Reply<B>> next) {
        if (this instanceof Answered<A> answered) {
            return next.apply(answered.answer());
        }
        return this instanceof Faulty<A> faulty ? new Faulty<>(faulty.faults()) : new Misasked<>(((Misasked<A>) this).what());
    }
}
