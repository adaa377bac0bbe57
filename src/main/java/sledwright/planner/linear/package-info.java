/** Linear programs, written row by row. */
package sledwright.planner.linear;
