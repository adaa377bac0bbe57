/** Drawings of figures, made of numbers and words alone: scales with round ticks, and charts as SVG. */
package sledwright.report.chart;
