package evenfall.message;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class OutputDigestTest {
    @Test
    void itIsTheSha256OfTopicsAndPayloadsWithALineFeedAfterEach() {
        OutputDigest digest = new OutputDigest();
        assertThat(digest.hex())
                .as("of nothing; FIPS 180-4 examples")
                .isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");

        digest.publish("a", Payload.of("{}".getBytes(StandardCharsets.UTF_8)), false, Delivery.LATEST);
        digest.publish("b", Payload.of(new byte[0]), true, Delivery.EVERY);

        // printf 'a\n{}\nb\n\n' | sha256sum (GNU coreutils)
        assertThat(digest.hex()).isEqualTo("c49a433ab2eeabd387d468511f229e61f9e6dca22384bef8cbae92a1a3ffdb3a");
        assertThat(digest.messages()).isEqualTo(2);
    }
}
