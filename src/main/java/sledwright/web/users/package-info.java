/**
 * Who may use the server: names, roles and hashed passwords in a file of their owner's, who is logged in, and how logins are slowed down.
 */
package sledwright.web.users;
