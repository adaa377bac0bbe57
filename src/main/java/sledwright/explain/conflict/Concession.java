package sledwright.explain.conflict;

import sledwright.explain.ask.WhatIf;
import sledwright.words.Sentence;

/**
 * As much of a demand as is possible.
 *
 * @param terms  the terms with so much in its place
 * @param to     what is possible, as a request file writes it; empty: the key must go
 * @param reach  what is possible, as a clause: {@code the cheapest build costs 950.00 EUR}
 * @param advice what to change: {@code raise the price from 900.00 to 950.00 EUR}
 */
record Concession(WhatIf terms, String to, Sentence reach, Sentence advice) {

    Concession(WhatIf terms, String to, String reach, String advice) {
        this(terms, to, Sentence.plain(reach), Sentence.plain(advice));
    }
}
