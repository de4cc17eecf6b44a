package evenfall.bench.prove.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.Map;
import java.util.Optional;

/** A guide led by a test: each reply under the key that the test expects. */
final class Walk {
    private Guide guide;

    Walk(Prover prover, Optional<Rig> rig) {
        this(prover, rig, Units.METRIC, Map.of());
    }

    Walk(Prover prover, Optional<Rig> rig, Units units, Map<String, Double> limits) {
        guide = Guide.begin(prover, new Setup(rig, units, limits));
    }

    Guide guide() {
        return guide;
    }

    Walk answer(String key, String text) {
        return give(key, new Reply.Typed(text));
    }

    Walk heard(String key, Recording recording) {
        return give(key, new Reply.Heard(recording));
    }

    private Walk give(String key, Reply reply) {
        assertThat(guide.step().key()).isEqualTo(key);
        try {
            guide = guide.reply(reply);
        } catch (Refusal e) {
            throw new AssertionError(key + ": " + e.getMessage(), e);
        }
        return this;
    }

    /** A reply that is refused in one line; the guide stays as it was. */
    Walk refuses(String text, String... parts) {
        return refuses(new Reply.Typed(text), parts);
    }

    Walk refuses(Reply reply, String... parts) {
        Guide before = guide;
        assertThatThrownBy(() -> before.reply(reply))
                .isInstanceOf(Refusal.class)
                .hasMessageContainingAll(parts)
                .hasMessageContaining("; allowed: ")
                .satisfies(e -> assertThat(e.getMessage()).doesNotContain("\n"));
        assertThat(guide.step().key()).isEqualTo(before.step().key());
        return this;
    }

    Proof proof() {
        assertThat(guide.step()).isInstanceOf(Step.Finished.class);
        return ((Step.Finished) guide.step()).proof();
    }
}
