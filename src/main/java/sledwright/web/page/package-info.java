/** The page on which somebody asks: its form of wishes, its files, and the pieces that it is made of anew with every change. */
package sledwright.web.page;
