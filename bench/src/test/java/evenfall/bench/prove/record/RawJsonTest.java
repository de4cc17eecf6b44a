package evenfall.bench.prove.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.bench.prove.guide.Recording;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class RawJsonTest {
    @Test
    void whatWasRecordedComesBackFromItsText() throws Exception {
        List<Recording> recordings = List.of(
                new Recording.Count(3021L, null, 60.4, false, true, false, 0.125),
                new Recording.Count(null, 99.75, 36.25, true, false, true, 1.5),
                new Recording.Echoes(
                        List.of(
                                new Recording.Look(0.05, Arrays.asList(2912L, null, 3022L)),
                                new Recording.Look(0.1, Arrays.asList(null, 2914L, null))),
                        14.25,
                        1.31),
                new Recording.Echoes(List.of(new Recording.Look(0.05, List.of(2912L))), null, null));
        for (Recording recording : recordings) {
            String text = RawJson.of(recording).toString();
            assertThat(RawJson.read(JsonMapper.builder().build().readTree(text)))
                    .isEqualTo(recording);
        }
    }

    @Test
    void anythingElseIsNoRecording() throws Exception {
        for (String text : List.of("{}", "{\"pulses\": 3}", "{\"seconds\": 3}")) {
            assertThat(RawJson.read(JsonMapper.builder().build().readTree(text)))
                    .isNull();
        }
    }
}
