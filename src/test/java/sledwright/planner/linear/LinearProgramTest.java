package sledwright.planner.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sledwright.generator.time.Deadline;
import sledwright.planner.linear.LinearProgram.Answer;
import sledwright.planner.linear.LinearProgram.Row;
import sledwright.planner.linear.LinearProgram.Variable;

class LinearProgramTest {

  private static final double CLOSE = 1e-9;

  private final LinearProgram program = new LinearProgram();

  /**
   * Two products of three plants: F. Hillier and G. Lieberman, "Introduction to Operations Research", chapters 3 and 4, from memory: 2 and 6
   * batches earn 36; an hour more is worth 0, 1.5 and 1.
   */
  @Test
  void textbookExampleAndItsShadowPrices() {
    Variable first = program.variable(-3);
    Variable second = program.variable(-5);
    Row one = program.atMost(4).add(first, 1);
    Row two = program.atMost(12).add(second, 2);
    Row three = program.atMost(18).add(first, 3).add(second, 2);
    Answer answer = solved();
    assertThat(answer.cost()).isCloseTo(-36, within(CLOSE));
    assertThat(answer.of(first)).isCloseTo(2, within(CLOSE));
    assertThat(answer.of(second)).isCloseTo(6, within(CLOSE));
    assertThat(answer.dual(one)).isCloseTo(0, within(CLOSE));
    assertThat(answer.dual(two)).isCloseTo(-1.5, within(CLOSE));
    assertThat(answer.dual(three)).isCloseTo(-1, within(CLOSE));
  }

  @Test
  void dualOfEachKindOfRowIsWhatOneMoreOfItsLimitCosts() {
    Variable cheap = program.variable(3, 2);
    Variable dear = program.variable(5);
    Variable other = program.variable(7).from(1);
    Row least = program.atLeast(8).add(cheap, 1).add(dear, 1);
    Row exact = program.exactly(4).add(other, 2);
    Answer answer = solved();
    assertThat(answer.cost()).isCloseTo(3 * 2 + 5 * 5 + 2 * 7, within(CLOSE));
    assertThat(answer.dual(least)).isCloseTo(5, within(CLOSE));
    assertThat(answer.dual(exact)).isCloseTo(3.5, within(CLOSE));
    assertThat(answer.of(other)).isCloseTo(2, within(CLOSE));
  }

  @Test
  void whatHasNoAnswerIsNotSolved() {
    Variable some = program.variable(2, 1);
    program.atLeast(3).add(some, 1);
    assertThat(program.solve(Deadline.never())).isEmpty();
  }

  @Test
  void afterTheDeadlineNothingIsSolved() {
    program.variable(1);
    assertThat(program.solve(Deadline.never().or(() -> true))).isEmpty();
    assertThat(program.solve(Deadline.never())).isPresent();
  }

  @Test
  void variableIsHeldToItsLeast() {
    Variable some = program.variable(9, 1).from(4);
    program.atMost(8).add(some, 1);
    assertThat(solved().of(some)).isCloseTo(4, within(CLOSE));
  }

  /** Duality: what the rows' limits are worth, and what the variables' limits save, is what all of it costs. */
  @Test
  void costIsWhatLimitsAreWorth() {
    int solved = 0;
    for (long seed = 1; seed <= 200; seed++) {
      long drawnOf = seed;
      Random random = new Random(seed);
      LinearProgram drawn = new LinearProgram();
      Variable[] variables = new Variable[3 + random.nextInt(20)];
      double[] left = new double[variables.length];
      for (int i = 0; i < variables.length; i++) {
        left[i] = 1 + random.nextInt(9);
        variables[i] = drawn.variable(left[i]);
      }
      double[] limits = new double[2 + random.nextInt(12)];
      Row[] rows = new Row[limits.length];
      double[][] factors = new double[rows.length][variables.length];
      for (int r = 0; r < rows.length; r++) {
        limits[r] = random.nextInt(30);
        rows[r] = r % 3 == 0 ? drawn.exactly(limits[r]) : drawn.atLeast(limits[r]);
        for (int i = 0; i < variables.length; i++) {
          factors[r][i] = i == r ? 1 : r % 3 != 0 || i > rows.length ? random.nextInt(4) : 0;
          rows[r].add(variables[i], factors[r][i]);
        }
      }
      Optional<Answer> found = drawn.solve(Deadline.never());
      solved += found.isPresent() ? 1 : 0;
      found.ifPresent(answer -> {
        double worth = 0;
        for (int r = 0; r < rows.length; r++) {
          worth += limits[r] * answer.dual(rows[r]);
          for (int i = 0; i < left.length; i++) {
            left[i] -= factors[r][i] * answer.dual(rows[r]);
          }
        }
        assertThat(worth).as("seed %s", drawnOf).isCloseTo(answer.cost(), within(1e-6));
        assertThat(Arrays.stream(left).min().orElseThrow()).as("seed %s, reduced costs", drawnOf).isGreaterThan(-1e-6);
      });
    }
    assertThat(solved).isGreaterThan(100);
  }

  private Answer solved() {
    return program.solve(Deadline.never()).orElseThrow();
  }
}
