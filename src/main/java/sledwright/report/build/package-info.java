/** What several answers show: a build, its explanation, work at the bench and its precautions. */
package sledwright.report.build;
