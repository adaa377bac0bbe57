/** Where the book is kept: a file, or a database that several desks share, brought up to date by the same steps. */
package sledwright.book.store;
