/** Every reader against hostile bytes: a search guided by coverage, and what it once found replayed in every run of the tests. */
package sledwright.fuzz;
