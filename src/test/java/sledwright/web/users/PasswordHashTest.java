package sledwright.web.users;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PasswordHashTest {

    /** By the command of the reference implementation (Debian's package argon2): echo -n password | argon2 somesalt -id -t 2 -m 12 -p 1 -l 32 -e. */
    private static final String OUTSIDE = "$argon2id$v=19$m=4096,t=2,p=1$c29tZXNhbHQ$jacJHQ+PoBstB/ZoVNk8re3s1yzVABZujceGiwVNJnk";

    @Test
    void aHashOfTheReferenceImplementationIsThatOfItsPassword() {
        assertThat(PasswordHash.isHash(OUTSIDE)).isTrue();
        assertThat(PasswordHash.matches("password", OUTSIDE)).isTrue();
        assertThat(PasswordHash.matches("Password", OUTSIDE)).isFalse();
    }

    @Test
    void aHashFitsItsPasswordAloneAndIsNeverTheSame() {
        String hash = PasswordHash.of("gr\u00fcn und lang genug");
        assertThat(PasswordHash.isHash(hash)).isTrue();
        assertThat(hash).startsWith("$argon2id$v=19$m=19456,t=2,p=1$").isNotEqualTo(PasswordHash.of("gr\u00fcn und lang genug"));
        assertThat(PasswordHash.matches("gr\u00fcn und lang genug", hash)).isTrue();
        assertThat(PasswordHash.matches("grun und lang genug", hash)).isFalse();
        assertThat(PasswordHash.matches("", hash)).isFalse();
        assertThat(PasswordHash.matches("x".repeat(300), hash)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "password", "$2a$10$abcdefghijklmnopqrstuv", "$argon2i$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHApl8ArZWb2GRPPc",
        "$argon2id$v=19$m=99999999,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHApl8ArZWb2GRPPc", "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$"})
    void whatIsNoHashOfItsOwnKindIsNone(String text) {
        assertThat(PasswordHash.isHash(text)).isFalse();
    }
}
