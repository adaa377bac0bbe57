package sledwright.book;

import java.nio.charset.StandardCharsets;
import java.util.List;
import sledwright.request.Addressee;

/** Whoever a quote of the book is for is the one to whom it is addressed, in what is kept of the request as in its papers. */
final class Addressing {

    private Addressing() {
    }

    /** The answer for a customer. */
    static Answered of(Answered answered, String customer) {
        List<String> lines = answered.answer().customer();
        return new Answered(of(answered.asked(), customer), Addressee.isFirst(lines, customer) ? answered.answer()
                : answered.answer().addressedTo(List.of(customer)), answered.digest());
    }

    /** The same of a request alone. */
    static String of(String request, String customer) {
        byte[] bytes = request.getBytes(StandardCharsets.UTF_8);
        return new String(new Addressee(bytes, List.of()).of(customer).request(), StandardCharsets.UTF_8);
    }

    /** What was asked, without whomever else the request may name. */
    static Asked of(Asked asked, String customer) {
        Addressee addressed = new Addressee(asked.request(), asked.sets()).of(customer);
        return new Asked(asked.name(), addressed.request(), addressed.sets(), asked.catalog());
    }
}
