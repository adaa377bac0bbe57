package sledwright.mail;

/** Understands one kind of wish. */
interface MailRule {

    void read(Passage passage, MailFindings findings);
}
