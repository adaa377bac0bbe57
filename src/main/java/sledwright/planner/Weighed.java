package sledwright.planner;

/** Why a criterion's constraint counts: what a line gives and takes in it. */
record Weighed(String stock, Trade trade) implements Judgement {
}
