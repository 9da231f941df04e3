/** Sound devices by way of the system's PortAudio library, where there is one. */
package offtape.cli.sound.portaudio;
