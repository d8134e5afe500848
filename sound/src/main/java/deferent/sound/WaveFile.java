package deferent.sound;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Samples as a WAV file: one channel, 16 bits, as every player takes it. */
public final class WaveFile {
    private static final int HEADER = 44;

    private WaveFile() {}

    /**
     * The file's bytes.
     *
     * @param samples within 1 either way; what is beyond is cut
     * @param rate samples a second
     */
    public static byte[] bytes(float[] samples, int rate) {
        int size = 2 * samples.length;
        ByteBuffer file = ByteBuffer.allocate(HEADER + size).order(ByteOrder.LITTLE_ENDIAN);
        file.put(ascii("RIFF")).putInt(HEADER - 8 + size).put(ascii("WAVE"));
        // One channel of plain numbers, two bytes each.
        file.put(ascii("fmt ")).putInt(16).putShort((short) 1).putShort((short) 1);
        file.putInt(rate).putInt(2 * rate).putShort((short) 2).putShort((short) 16);
        file.put(ascii("data")).putInt(size);
        for (float sample : samples) {
            file.putShort((short) Math.round(32_767 * Math.max(-1, Math.min(1, sample))));
        }
        return file.array();
    }

    private static byte[] ascii(String word) {
        return word.getBytes(StandardCharsets.US_ASCII);
    }
}
