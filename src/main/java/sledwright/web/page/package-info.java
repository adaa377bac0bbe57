/** The page on which somebody asks: its form of wishes, its files, and the pieces that every change replaces. */
package sledwright.web.page;
